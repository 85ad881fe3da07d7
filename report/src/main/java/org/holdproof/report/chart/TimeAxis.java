package org.holdproof.report.chart;

import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.holdproof.core.quantity.Span;
import org.holdproof.report.draw.Lettering;
import org.holdproof.report.draw.Typesetter;

/**
 * A level axis of time, read on the kitchen's clock.
 *
 * @param x where it begins on the sheet, in points
 * @param width in points
 * @param from its first instant, in milliseconds since 1970-01-01T00:00Z
 * @param to its last instant, after the first
 * @param leftOut stretches within it that are drawn as a narrow break, in order and apart
 */
record TimeAxis(double x, double width, long from, long to, ZoneId zone, List<Span> leftOut) {
    /** What a stretch left out takes on the sheet, in points. */
    static final double BREAK = 12;

    private static final int[] STEP_MINUTES = {
        1, 2, 5, 10, 15, 30, 60, 120, 180, 240, 360, 720, 1440, 2 * 1440, 7 * 1440, 14 * 1440, 28 * 1440
    };
    private static final int DAY = 1440;
    private static final double ROOM = 1.6;
    private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("HH:mm", Locale.ENGLISH);
    private static final DateTimeFormatter DATE = DateTimeFormatter.ofPattern("EEE d MMM", Locale.ENGLISH);

    /**
     * A mark on the axis.
     *
     * @param time the time of day; empty on an axis of days
     * @param date the date, at the first mark and where it changes; else empty
     */
    record Tick(long epochMillis, String time, String date) {}

    TimeAxis(double x, double width, long from, long to, ZoneId zone) {
        this(x, width, from, to, zone, List.of());
    }

    double x(long epochMillis) {
        double scale = pointsPerMilli();
        double at = x;
        long reached = from;
        for (Span gone : leftOut) {
            if (epochMillis <= gone.fromMillis()) {
                break;
            }
            at += (gone.fromMillis() - reached) * scale;
            if (epochMillis < gone.toMillis()) {
                return at + BREAK * (epochMillis - gone.fromMillis()) / (gone.toMillis() - gone.fromMillis());
            }
            at += BREAK;
            reached = gone.toMillis();
        }
        return at + (epochMillis - reached) * scale;
    }

    private double pointsPerMilli() {
        long gone = leftOut.stream()
                .mapToLong(span -> span.toMillis() - span.fromMillis())
                .sum();
        return (width - leftOut.size() * BREAK) / (to - from - gone);
    }

    private boolean isLeftOut(long epochMillis) {
        return leftOut.stream().anyMatch(gone -> epochMillis > gone.fromMillis() && epochMillis < gone.toMillis());
    }

    List<Tick> ticks(Typesetter type, Lettering lettering) {
        double widest = type.width(lettering, "Wed 30 Sep");
        double narrow = type.width(lettering, "00:00");
        int step = STEP_MINUTES[STEP_MINUTES.length - 1];
        for (int minutes : STEP_MINUTES) {
            double apart = pointsPerMilli() * minutes * 60_000.0;
            if (apart >= ROOM * (minutes < DAY ? narrow : widest)) {
                step = minutes;
                break;
            }
        }
        return step < DAY ? timesOfDay(step) : days(step / DAY);
    }

    private List<Tick> timesOfDay(int step) {
        List<Tick> ticks = new ArrayList<>();
        LocalDate day = Instant.ofEpochMilli(from).atZone(zone).toLocalDate();
        String dated = "";
        for (LocalDateTime clock = day.atStartOfDay(); ; clock = clock.plusMinutes(step)) {
            // A local time that a clock change leaves out moves on with the clock; one that comes twice is its first.
            var moment = clock.atZone(zone);
            long instant = moment.toInstant().toEpochMilli();
            if (instant > to) {
                return ticks;
            }
            if (instant < from || (!ticks.isEmpty() && instant <= ticks.get(ticks.size() - 1).epochMillis)) {
                continue;
            }
            if (isLeftOut(instant)) {
                continue;
            }
            String date = DATE.format(moment);
            ticks.add(new Tick(instant, TIME.format(moment), date.equals(dated) ? "" : date));
            dated = date;
        }
    }

    private List<Tick> days(int step) {
        List<Tick> ticks = new ArrayList<>();
        LocalDate day = Instant.ofEpochMilli(from).atZone(zone).toLocalDate();
        for (; ; day = day.plusDays(step)) {
            long instant = day.atStartOfDay(zone).toInstant().toEpochMilli();
            if (instant > to) {
                return ticks;
            }
            if (instant >= from && !isLeftOut(instant)) {
                ticks.add(new Tick(instant, "", DATE.format(day)));
            }
        }
    }
}
