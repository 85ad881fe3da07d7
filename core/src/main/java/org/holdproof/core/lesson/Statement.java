package org.holdproof.core.lesson;

import java.util.List;
import org.holdproof.core.rules.Citation;

/**
 * Something the lesson says, with where it stands.
 *
 * @param title in a few words
 * @param text in one to three sentences
 */
public record Statement(String title, String text, List<Citation> citations) {
    public Statement {
        citations = List.copyOf(citations);
    }
}
