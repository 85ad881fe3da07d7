package org.holdproof.core.rules;

import org.holdproof.core.rules.Source.How;

/**
 * Where one rule stands, and how its figures were obtained.
 *
 * @param document document with its edition, as printed
 * @param section section, table or page
 * @param how how the rule's own figures were obtained
 * @param note what to know about that, or empty
 */
public record Citation(Source source, String document, String section, How how, String note) {

    /** Document, section and, where the figure was not read there, how it was obtained. */
    public String text() {
        if (how == How.COMMON_PRACTICE) {
            return how.title();
        }
        return document
                + (section.isEmpty() ? "" : ", " + section)
                + (how.caveat().isEmpty() ? "" : " (" + how.caveat() + ")");
    }
}
