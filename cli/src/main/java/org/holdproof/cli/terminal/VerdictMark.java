package org.holdproof.cli.terminal;

import org.holdproof.core.verdict.Verdict;

/** A verdict as a sign and its word; colour only says again what the word says. */
public final class VerdictMark {
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
        return colour ? paint(verdict) + text + ScreenCode.PLAIN : text;
    }

    private static ScreenCode paint(Verdict verdict) {
        return switch (verdict) {
            case MET -> ScreenCode.GREEN;
            case NOT_MET -> ScreenCode.RED;
            case NOT_PROVEN -> ScreenCode.AMBER;
        };
    }
}
