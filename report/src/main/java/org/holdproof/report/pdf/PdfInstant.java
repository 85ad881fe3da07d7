package org.holdproof.report.pdf;

import java.time.DateTimeException;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Optional;

/** A PDF date (ISO 32000-1, 7.9.4) in the one form this program writes: to the second, in UTC. */
public final class PdfInstant {
    private static final DateTimeFormatter FORM =
            DateTimeFormatter.ofPattern("'D:'uuuuMMddHHmmss'Z'").withZone(ZoneOffset.UTC);

    private PdfInstant() {}

    public static String format(Instant instant) {
        return FORM.format(instant);
    }

    public static Optional<Instant> parse(String text) {
        try {
            return Optional.of(Instant.from(FORM.parse(text)));
        } catch (DateTimeException otherwise) {
            return Optional.empty();
        }
    }
}
