package org.holdproof.report.layout;

import java.time.Instant;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.time.format.TextStyle;
import java.util.Locale;
import org.holdproof.core.quantity.Span;

/** Prints instants as the kitchen's clock showed them. */
final class KitchenClock {
    private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("HH:mm", Locale.ENGLISH);
    private static final DateTimeFormatter DATE = DateTimeFormatter.ofPattern("d MMM yyyy", Locale.ENGLISH);
    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMM", Locale.ENGLISH);
    private static final double MINUTES_PER_DAY = 1440;

    private final ZoneId zone;

    KitchenClock(ZoneId zone) {
        this.zone = zone;
    }

    ZoneId zone() {
        return zone;
    }

    String time(long epochMillis) {
        return TIME.format(at(epochMillis));
    }

    /** Date and time. */
    String moment(long epochMillis) {
        return DATE.format(at(epochMillis)) + ", " + time(epochMillis);
    }

    /** Day and month without the year, and time. */
    String dayAndTime(long epochMillis) {
        return DAY.format(at(epochMillis)) + ", " + time(epochMillis);
    }

    /** From one moment to another, the second date only where it differs. */
    String span(Span span) {
        boolean sameDay =
                at(span.fromMillis()).toLocalDate().equals(at(span.toMillis()).toLocalDate());
        return moment(span.fromMillis()) + " to " + (sameDay ? time(span.toMillis()) : moment(span.toMillis()));
    }

    /** The zone's name and its offset at an instant. */
    String zoneAt(long epochMillis) {
        ZonedDateTime moment = at(epochMillis);
        String offset = moment.getOffset().getId().equals("Z")
                ? "UTC"
                : "UTC" + moment.getOffset().getId().replace('-', '−');
        String name = zone.getDisplayName(TextStyle.FULL, Locale.ENGLISH);
        return zone.getId() + (name.equals(zone.getId()) ? "" : ", " + name) + " (" + offset + ")";
    }

    /** A length of time in the two units that suit it. */
    static String length(double minutes) {
        if (minutes < 1) {
            return Math.round(minutes * 60) + " s";
        }
        long whole = Math.round(minutes);
        if (whole < 60) {
            return whole + " min";
        }
        if (whole < 3 * MINUTES_PER_DAY) {
            return whole / 60 + " h" + (whole % 60 == 0 ? "" : " " + whole % 60 + " min");
        }
        long hours = Math.round(minutes / 60);
        return hours / 24 + " d" + (hours % 24 == 0 ? "" : " " + hours % 24 + " h");
    }

    private ZonedDateTime at(long epochMillis) {
        return Instant.ofEpochMilli(epochMillis).atZone(zone);
    }
}
