package org.holdproof.core.input;

import java.util.Collection;
import java.util.Comparator;
import java.util.Locale;
import java.util.Optional;

/** Finds the known word a misspelt one was meant to be. */
public final class NearestWord {
    private NearestWord() {}

    /** The nearest known word, where it is near enough to be meant: a third of its letters, at least two, may differ. */
    public static Optional<String> to(String word, Collection<String> known) {
        return known.stream()
                .min(Comparator.comparingInt(candidate -> distance(word, candidate)))
                .filter(candidate -> distance(word, candidate) <= Math.max(2, candidate.length() / 3));
    }

    /** Edit distance (Levenshtein), letter case ignored. */
    private static int distance(String left, String right) {
        String a = left.toLowerCase(Locale.ROOT);
        String b = right.toLowerCase(Locale.ROOT);
        int[] row = new int[b.length() + 1];
        for (int j = 0; j <= b.length(); j++) {
            row[j] = j;
        }
        for (int i = 1; i <= a.length(); i++) {
            int diagonal = row[0];
            row[0] = i;
            for (int j = 1; j <= b.length(); j++) {
                int substitute = diagonal + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1);
                diagonal = row[j];
                row[j] = Math.min(substitute, Math.min(row[j], row[j - 1]) + 1);
            }
        }
        return row[b.length()];
    }
}
