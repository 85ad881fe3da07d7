package org.holdproof.core.log.reading;

import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.IntPredicate;
import java.util.stream.IntStream;

/** Finds the column or columns that tell the time. */
final class ClockFinder {
    private final List<Heading> headings;
    private final List<ColumnSample> samples;
    private final long line;
    private final Optional<ZoneId> preambleZone;
    private final boolean startSettled;

    /**
     * @param headings one a column; empty texts where the table has none
     * @param samples one a column
     * @param line the line to name where no clock is found
     * @param startSettled whether somebody settled the start of elapsed time
     */
    ClockFinder(
            List<Heading> headings,
            List<ColumnSample> samples,
            long line,
            Optional<ZoneId> preambleZone,
            boolean startSettled) {
        this.headings = headings;
        this.samples = samples;
        this.line = line;
        this.preambleZone = preambleZone;
        this.startSettled = startSettled;
    }

    /** @throws Refusal if there is no clock, more than one, or one whose meaning is open */
    ClockPlan find() {
        List<Integer> stamps = columns(this::isStamp);
        if (!stamps.isEmpty()) {
            return stamp(choose(stamps));
        }
        List<Integer> dates = columns(i -> samples.get(i).mostly(CellKind.DATE));
        List<Integer> times = columns(i -> samples.get(i).mostly(CellKind.TIME_OF_DAY, CellKind.ELAPSED)
                && !headings.get(i).isElapsed());
        if (!dates.isEmpty() && !times.isEmpty()) {
            int date = choose(dates);
            int time = choose(times);
            Optional<ZoneId> zone = statedZone(time).or(() -> statedZone(date)).or(() -> preambleZone);
            return new ClockPlan(ClockPlan.Kind.DATE_AND_TIME, date, time, 0, zone);
        }
        return elapsed();
    }

    /** Date and time in one cell; or seconds or milliseconds since 1970, which a serial number can look like. */
    private boolean isStamp(int column) {
        Heading heading = headings.get(column);
        ColumnSample sample = samples.get(column);
        boolean number =
                heading.isOther() && !heading.isClock() && !heading.text().isEmpty();
        return sample.mostly(CellKind.DATE_AND_TIME)
                || (sample.mostly(CellKind.EPOCH_SECONDS, CellKind.EPOCH_MILLIS) && sample.varies() && !number);
    }

    private List<Integer> columns(IntPredicate test) {
        return IntStream.range(0, headings.size())
                .filter(i -> headings.get(i).unit().isEmpty())
                .filter(test)
                .boxed()
                .toList();
    }

    private ClockPlan stamp(int column) {
        ColumnSample sample = samples.get(column);
        ClockPlan.Kind kind = sample.mostly(CellKind.EPOCH_SECONDS)
                ? ClockPlan.Kind.EPOCH_SECONDS
                : sample.mostly(CellKind.EPOCH_MILLIS) ? ClockPlan.Kind.EPOCH_MILLIS : ClockPlan.Kind.STAMP;
        Optional<ZoneId> stated = statedZone(column);
        if (kind.isEpoch() && stated.isPresent() && !stated.get().equals(ZoneOffset.UTC)) {
            throw new Refusal(
                    line,
                    column + 1,
                    Refusal.quote(headings.get(column).text())
                            + " over seconds that count from 1970, which have no offset",
                    "a count that is of UTC, or dates and times",
                    "If the figures do count from 1970-01-01 00:00 UTC, take the offset out of the heading; if they count the"
                            + " local clock, export dates and times instead.");
        }
        return new ClockPlan(kind, column, -1, 0, stated.or(() -> preambleZone));
    }

    private Optional<ZoneId> statedZone(int column) {
        Heading heading = headings.get(column);
        if (!heading.isUniversalTime()) {
            return Optional.empty();
        }
        String text = heading.text().replaceAll("(?i)^.*?((?:utc|gmt)(?:\\s*[+-]\\s*\\d{1,2}(?::?\\d{2})?)?).*$", "$1");
        return Preamble.zone(text).or(() -> Optional.of(ZoneOffset.UTC));
    }

    /**
     * Of several clocks that run, and whose headings do not mean another moment, the one that needs no zone, or else the
     * only one.
     */
    private int choose(List<Integer> columns) {
        if (columns.size() == 1) {
            return columns.get(0);
        }
        List<Integer> measured =
                columns.stream().filter(i -> !headings.get(i).isOtherClock()).toList();
        List<Integer> running =
                measured.stream().filter(i -> samples.get(i).varies()).toList();
        List<Integer> left = !running.isEmpty() ? running : !measured.isEmpty() ? measured : columns;
        for (int i : left) {
            if (headings.get(i).isUniversalTime()
                    || samples.get(i).hasOffsets()
                    || samples.get(i).mostly(CellKind.EPOCH_SECONDS, CellKind.EPOCH_MILLIS)) {
                return i;
            }
        }
        if (left.size() == 1) {
            return left.get(0);
        }
        throw new Refusal(
                line,
                left.get(1) + 1,
                "two clocks, in column " + (left.get(0) + 1) + " and column " + (left.get(1) + 1),
                "one clock",
                "Remove the column that does not tell when the readings were taken.");
    }

    private ClockPlan elapsed() {
        List<Integer> withColons = new ArrayList<>();
        List<Integer> figures = new ArrayList<>();
        for (int i = 0; i < headings.size(); i++) {
            if (!headings.get(i).isClock()) {
                continue;
            }
            if (samples.get(i).mostly(CellKind.TIME_OF_DAY, CellKind.ELAPSED)) {
                withColons.add(i);
            } else if (samples.get(i).mostly(CellKind.FIGURE) && samples.get(i).runsOneWay()) {
                figures.add(i);
            }
        }
        Optional<Integer> withUnit = figures.stream()
                .filter(i -> headings.get(i).elapsedUnitMillis() > 0)
                .findFirst();
        if (withUnit.isPresent()) {
            int column = withUnit.get();
            return new ClockPlan(
                    ClockPlan.Kind.ELAPSED_FIGURE,
                    column,
                    -1,
                    headings.get(column).elapsedUnitMillis(),
                    Optional.empty());
        }
        if (!withColons.isEmpty()) {
            return withColons(withColons.get(0));
        }
        if (!figures.isEmpty()) {
            throw new Refusal(
                    line,
                    figures.get(0) + 1,
                    "a time in figures under "
                            + Refusal.quote(headings.get(figures.get(0)).text()),
                    "a heading that says what the figures are, such as \"Elapsed (s)\" or \"Elapsed (min)\"",
                    "Add the unit to the heading; format a spreadsheet's day numbers as date and time.");
        }
        for (int i = 0; i < headings.size(); i++) {
            if (headings.get(i).isClock()
                    && headings.get(i).elapsedUnitMillis() > 0
                    && samples.get(i).mostly(CellKind.FIGURE)) {
                throw SectionReader.restarted(line, i + 1);
            }
        }
        throw noClock();
    }

    private ClockPlan withColons(int column) {
        Heading heading = headings.get(column);
        ColumnSample sample = samples.get(column);
        if (!heading.isElapsed() && !sample.mostly(CellKind.ELAPSED) && !(startSettled && sample.startsAtZero())) {
            throw new Refusal(
                    line,
                    column + 1,
                    "a time without a date under " + Refusal.quote(heading.text()),
                    "a date as well, or a heading that says that the time is elapsed time",
                    "Export with the date; or, if the time is counted from the start, head it \"Elapsed\" and give the"
                            + " start as \"log.start\" in the batch record.");
        }
        ClockPlan.Kind kind = ClockPlan.Kind.ELAPSED_HOURS_MINUTES_SECONDS;
        if (sample.hasTwoPartTimes()) {
            boolean minutes = heading.hasPattern("m{1,2}:ss");
            boolean hours = heading.hasPattern("h{1,2}:mm");
            if (minutes == hours) {
                throw new Refusal(
                        line,
                        column + 1,
                        "elapsed times of two parts under " + Refusal.quote(heading.text()),
                        "a heading that says whether they are mm:ss or h:mm",
                        "Add \"(mm:ss)\" or \"(h:mm)\" to the heading.");
            }
            kind = minutes ? ClockPlan.Kind.ELAPSED_MINUTES_SECONDS : ClockPlan.Kind.ELAPSED_HOURS_MINUTES;
        }
        return new ClockPlan(kind, column, -1, 0, Optional.empty());
    }

    private Refusal noClock() {
        return new Refusal(
                line,
                0,
                "no column that tells the time",
                "a date and time, a date and a time of day, or an elapsed time with its unit",
                "Export with the time of each reading, under a heading such as \"Time\" or \"Elapsed (s)\".");
    }
}
