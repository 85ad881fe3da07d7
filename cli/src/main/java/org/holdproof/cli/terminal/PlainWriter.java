package org.holdproof.cli.terminal;

import java.io.FilterWriter;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.Writer;

/** Puts ASCII in the place of every other character, so that a terminal without UTF-8 shows words and no question marks. */
final class PlainWriter extends FilterWriter {
    PlainWriter(Writer out) {
        super(out);
    }

    /** A print writer keeps to itself that it could not write. */
    @Override
    public void flush() throws IOException {
        out.flush();
        if (out instanceof PrintWriter inner && inner.checkError()) {
            throw new IOException("the terminal does not take what is written");
        }
    }

    @Override
    public void write(int c) throws IOException {
        out.write(plain((char) c));
    }

    @Override
    public void write(char[] characters, int offset, int length) throws IOException {
        for (int i = offset; i < offset + length; i++) {
            write(characters[i]);
        }
    }

    @Override
    public void write(String text, int offset, int length) throws IOException {
        for (int i = offset; i < offset + length; i++) {
            write(text.charAt(i));
        }
    }

    private static String plain(char c) {
        if (c < 0x80) {
            return String.valueOf(c);
        }
        return switch (c) {
            case '°' -> "";
            case '–', '—', '−', '·' -> "-";
            case '…' -> "~";
            case '≥' -> ">=";
            case '≤' -> "<=";
            case '×' -> "x";
            case '’', '‘' -> "'";
            case '“', '”' -> "\"";
            case '\u00a0', '\u202f' -> " ";
            default -> "?";
        };
    }
}
