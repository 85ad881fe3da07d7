package org.holdproof.core.wording;

/** Text that came from a file, made safe to print: a terminal obeys control characters, a reader's eye direction marks. */
public final class Printable {
    private static final char REPLACEMENT = '\uFFFD';

    private Printable() {}

    /**
     * Whether a character prints as itself: no control (C0, C1), no lone half of a pair, no separator of lines, nothing
     * that turns the direction of writing (Unicode Standard Annex 9, explicit directional formatting characters).
     */
    public static boolean is(int codePoint) {
        return switch (Character.getType(codePoint)) {
            case Character.CONTROL, Character.SURROGATE, Character.LINE_SEPARATOR, Character.PARAGRAPH_SEPARATOR ->
                false;
            default ->
                !(codePoint >= 0x202A && codePoint <= 0x202E)
                        && !(codePoint >= 0x2066 && codePoint <= 0x2069)
                        && codePoint != 0x200E
                        && codePoint != 0x200F
                        && codePoint != 0x061C;
        };
    }

    /** The text on one line, whatever does not print replaced by U+FFFD. */
    public static String line(String text) {
        int at = 0;
        while (at < text.length() && is(text.codePointAt(at))) {
            at += Character.charCount(text.codePointAt(at));
        }
        if (at == text.length()) {
            return text;
        }
        StringBuilder line = new StringBuilder(text.length());
        text.codePoints().forEach(codePoint -> line.appendCodePoint(is(codePoint) ? codePoint : REPLACEMENT));
        return line.toString();
    }
}
