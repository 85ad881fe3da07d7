package org.holdproof.cli.terminal;

import org.holdproof.core.verdict.Verdict;

/** A verdict as a sign and its word; colour only says again what the word says. */
public final class VerdictMark {
    private static final String PLAIN = "\u001b[0m";

    private VerdictMark() {}

    /** {@code ✔ MET}, {@code ✘ NOT MET}, {@code ? NOT PROVEN}. */
    public static String of(Verdict verdict, boolean unicode, boolean colour) {
        String mark =
                switch (verdict) {
                    case MET -> unicode ? "✔" : "+";
                    case NOT_MET -> unicode ? "✘" : "x";
                    case NOT_PROVEN -> "?";
                };
        String text = mark + " " + verdict.words();
        return colour ? paint(verdict) + text + PLAIN : text;
    }

    private static String paint(Verdict verdict) {
        return switch (verdict) {
            case MET -> "\u001b[1;32m";
            case NOT_MET -> "\u001b[1;31m";
            case NOT_PROVEN -> "\u001b[1;33m";
        };
    }
}
