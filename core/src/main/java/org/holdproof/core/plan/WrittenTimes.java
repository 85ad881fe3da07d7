package org.holdproof.core.plan;

import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.format.DateTimeParseException;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.holdproof.core.quantity.QuantityKind;
import org.holdproof.core.quantity.UnreadableQuantityException;

/** Times as a cook writes them on one line. */
public final class WrittenTimes {
    private static final String FIGURE = "([0-9]{1,4}(?:\\.[0-9]{1,4})?)";
    private static final Pattern SPELL =
            Pattern.compile("(?:" + FIGURE + " ?d)? ?(?:" + FIGURE + " ?h)? ?(?:" + FIGURE + " ?min)?");
    private static final double[] MINUTES = {1440, 60, 1};
    private static final Pattern SMOKE = Pattern.compile("(.+?) for (.+)");

    private WrittenTimes() {}

    /**
     * A span such as {@code 6 h}, {@code 90 min} or {@code 1 d 6 h}, in minutes.
     *
     * @throws UnplannableException if it is not one
     */
    public static double minutes(String text) {
        Matcher matcher = SPELL.matcher(text.strip());
        double minutes = 0;
        boolean any = false;
        if (matcher.matches()) {
            for (int group = 1; group <= MINUTES.length; group++) {
                String figure = matcher.group(group);
                if (figure != null) {
                    any = true;
                    minutes += Double.parseDouble(figure) * MINUTES[group - 1];
                }
            }
        }
        if (!any) {
            throw new UnplannableException(
                    "found '" + text + "'; expected a time with its units (d, h, min), such as '6 h' or '1 h 30 min'");
        }
        return minutes;
    }

    /**
     * A smoke step such as {@code 110 °C for 6 h}.
     *
     * @throws UnplannableException if it is not one
     */
    public static SmokeStep smoke(String text) {
        Matcher matcher = SMOKE.matcher(text.strip());
        if (!matcher.matches()) {
            throw new UnplannableException(
                    "found '" + text + "'; expected the smoker's air and how long, such as '110 °C for 6 h'");
        }
        try {
            return new SmokeStep(QuantityKind.TEMPERATURE.parse(matcher.group(1)), minutes(matcher.group(2)));
        } catch (UnreadableQuantityException e) {
            throw new UnplannableException("found " + e.found() + "; expected " + e.expected() + ". " + e.remedy());
        }
    }

    /**
     * An instant such as {@code 2031-05-01T18:00}, its offset written or settled by the kitchen's zone.
     *
     * @throws UnplannableException if it is not one, or the zone's clocks skip it or show it twice
     */
    public static Instant instant(String text, ZoneId zone) {
        try {
            return OffsetDateTime.parse(text).toInstant();
        } catch (DateTimeParseException noOffset) {
            return local(text, zone);
        }
    }

    private static Instant local(String text, ZoneId zone) {
        try {
            LocalDateTime local = LocalDateTime.parse(text);
            List<ZoneOffset> offsets = zone.getRules().getValidOffsets(local);
            if (offsets.size() != 1) {
                throw new UnplannableException("found '" + text + "', a time the clocks of " + zone.getId()
                        + (offsets.isEmpty() ? " skip" : " show twice")
                        + "; add the offset they run on, such as '" + text + "+02:00'");
            }
            return local.toInstant(offsets.get(0));
        } catch (DateTimeParseException e) {
            throw new UnplannableException("found '" + text
                    + "'; expected date and time on the 24-hour clock, such as '2031-05-01T18:00' or"
                    + " '2031-05-01T18:00-05:00'");
        }
    }

    /**
     * A zone of the time zone database.
     *
     * @throws UnplannableException if there is none of that name
     */
    public static ZoneId zone(String text) {
        try {
            return ZoneId.of(text);
        } catch (DateTimeException e) {
            throw new UnplannableException("found '" + text + "'; expected a zone such as 'Europe/Oslo'");
        }
    }
}
