package org.holdproof.cli.terminal;

import java.io.FilterWriter;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.Writer;
import java.util.Optional;
import org.holdproof.core.wording.Printable;

/**
 * The one door from the program's texts to a terminal: whatever came from a file is shown, never obeyed. Of what is
 * not printable only ends of lines and the program's own {@link ScreenCode}s pass; the rest becomes U+FFFD.
 */
final class PrintableWriter extends FilterWriter {
    private static final int REPLACEMENT = 0xFFFD;

    PrintableWriter(Writer out) {
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
        write(String.valueOf((char) c));
    }

    @Override
    public void write(char[] characters, int offset, int length) throws IOException {
        write(new String(characters, offset, length));
    }

    @Override
    public void write(String text, int offset, int length) throws IOException {
        write(text.substring(offset, offset + length));
    }

    @Override
    public void write(String text) throws IOException {
        StringBuilder shown = new StringBuilder(text.length());
        int at = 0;
        while (at < text.length()) {
            int character = text.codePointAt(at);
            Optional<ScreenCode> code = ScreenCode.at(text, at);
            if (code.isPresent()) {
                shown.append(code.get().sent());
                at += ScreenCode.length();
                continue;
            }
            boolean lineEnd = character == '\n' || text.startsWith("\r\n", at);
            shown.appendCodePoint(lineEnd || Printable.is(character) ? character : REPLACEMENT);
            at += Character.charCount(character);
        }
        out.write(shown.toString());
    }
}
