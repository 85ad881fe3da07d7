package org.holdproof.report.archive;

import java.time.Instant;
import java.time.temporal.ChronoUnit;

/**
 * What a PDF says of itself.
 *
 * @param title its title
 * @param author who answers for it: the kitchen
 * @param language of its text, a BCP 47 tag such as {@code en-US}
 * @param tagged whether its pages say what their content is, for readers who do not see them
 * @param created when it was written; printed to the second
 */
public record DocumentFacts(String title, String author, String language, boolean tagged, Instant created) {
    /** @throws IllegalArgumentException if a text is blank or holds a character XML cannot carry */
    public DocumentFacts {
        check("title", title);
        check("author", author);
        check("language", language);
        created = created.truncatedTo(ChronoUnit.SECONDS);
    }

    private static void check(String what, String text) {
        if (text.isBlank()) {
            throw new IllegalArgumentException("a report needs a " + what);
        }
        boolean carried = text.codePoints()
                .allMatch(c -> c >= 0x20 && c != 0xFFFE && c != 0xFFFF && !(c >= 0xD800 && c <= 0xDFFF));
        if (!carried) {
            throw new IllegalArgumentException("the report's " + what + " holds a character that cannot be written");
        }
    }
}
