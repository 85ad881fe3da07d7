package org.holdproof.core.batch;

import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.zone.ZoneRules;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.holdproof.core.input.JsonValue;
import org.holdproof.core.input.UnreadableInputException;

/** Dates and times as ISO 8601 writes them. */
final class TimeText {
    private static final String DATE = "(19[7-9][0-9]|2[01][0-9]{2})-([0-9]{2})-([0-9]{2})";
    private static final Pattern DAY = Pattern.compile(DATE);
    private static final Pattern MOMENT = Pattern.compile(
            DATE + "T([0-9]{2}):([0-9]{2})(?::([0-9]{2})(?:\\.([0-9]{1,3}))?)?(Z|[+-][0-9]{2}:[0-9]{2})?");

    private TimeText() {}

    /** An instant, its offset written or settled by the kitchen's zone. */
    static Instant instant(JsonValue.Text text, ZoneId zone) throws UnreadableInputException {
        Matcher matcher = MOMENT.matcher(text.value());
        if (!matcher.matches()) {
            throw notATime(text);
        }
        try {
            LocalDateTime local = LocalDateTime.of(
                    Integer.parseInt(matcher.group(1)),
                    Integer.parseInt(matcher.group(2)),
                    Integer.parseInt(matcher.group(3)),
                    Integer.parseInt(matcher.group(4)),
                    Integer.parseInt(matcher.group(5)),
                    matcher.group(6) == null ? 0 : Integer.parseInt(matcher.group(6)),
                    matcher.group(7) == null
                            ? 0
                            : Integer.parseInt((matcher.group(7) + "00").substring(0, 3)) * 1_000_000);
            String offset = matcher.group(8);
            return local.toInstant(offset == null ? offset(text, local, zone) : ZoneOffset.of(offset));
        } catch (DateTimeException e) {
            throw notATime(text);
        }
    }

    /** A date. */
    static LocalDate date(JsonValue.Text text) throws UnreadableInputException {
        Matcher matcher = DAY.matcher(text.value());
        if (matcher.matches()) {
            try {
                return LocalDate.of(
                        Integer.parseInt(matcher.group(1)),
                        Integer.parseInt(matcher.group(2)),
                        Integer.parseInt(matcher.group(3)));
            } catch (DateTimeException e) {
                // no such day: told below
            }
        }
        throw text.place()
                .fault(text.words(), "a date of the years 1970 to 2199 such as '2031-04-01'", "Write year-month-day.");
    }

    private static ZoneOffset offset(JsonValue.Text text, LocalDateTime local, ZoneId zone)
            throws UnreadableInputException {
        ZoneRules rules = zone.getRules();
        List<ZoneOffset> offsets = rules.getValidOffsets(local);
        if (offsets.size() == 1) {
            return offsets.get(0);
        }
        if (offsets.isEmpty()) {
            throw text.place()
                    .fault(
                            text.words() + ", a time the clocks of " + zone.getId() + " skip",
                            "a time that there was",
                            "Add the offset the clock ran on: "
                                    + written(
                                            text,
                                            List.of(
                                                    rules.getTransition(local).getOffsetBefore(),
                                                    rules.getTransition(local).getOffsetAfter()))
                                    + ".");
        }
        throw text.place()
                .fault(
                        text.words() + ", a time the clocks of " + zone.getId() + " show twice",
                        "one instant",
                        "Add the offset: " + written(text, offsets) + ".");
    }

    private static String written(JsonValue.Text text, List<ZoneOffset> offsets) {
        return offsets.stream()
                .map(offset -> "'" + text.value() + offset.getId() + "'")
                .collect(Collectors.joining(" or "));
    }

    private static UnreadableInputException notATime(JsonValue.Text text) {
        return text.place()
                .fault(
                        text.words(),
                        "a time of the years 1970 to 2199 such as '2031-04-12T14:00' or '2031-04-12T14:00-05:00'",
                        "Write year-month-dayThour:minute on the 24-hour clock, with the offset where it is not the"
                                + " kitchen's own time.");
    }
}
