package org.holdproof.report.pdf;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Reads PDF values one after the other, strictly: what is not plainly allowed is refused. */
final class PdfScanner {
    private static final int DEEPEST = 64;

    private final byte[] file;
    private int at;

    PdfScanner(byte[] file, int at) {
        this.file = file;
        this.at = at;
    }

    int position() {
        return at;
    }

    /** Passes over exactly these characters. */
    void expect(String text) throws MalformedPdfException {
        if (!startsWith(text)) {
            throw new MalformedPdfException(at, "expected \"" + text.strip() + "\"");
        }
        at += text.length();
    }

    boolean startsWith(String text) {
        if (at < 0 || at + text.length() > file.length) {
            return false;
        }
        for (int i = 0; i < text.length(); i++) {
            if (file[at + i] != (byte) text.charAt(i)) {
                return false;
            }
        }
        return true;
    }

    void skipWhite() {
        while (at < file.length && isWhite(file[at])) {
            at++;
        }
    }

    void skip(int bytes) throws MalformedPdfException {
        if (bytes < 0 || bytes > file.length - at) {
            throw new MalformedPdfException(at, "a length of " + bytes + " bytes leads out of the file");
        }
        at += bytes;
    }

    /** A whole number of digits only. */
    long digits() throws MalformedPdfException {
        int start = at;
        long value = 0;
        while (at < file.length && file[at] >= '0' && file[at] <= '9') {
            value = value * 10 + (file[at] - '0');
            at++;
            if (at - start > 15) {
                throw new MalformedPdfException(start, "a number too long");
            }
        }
        if (at == start) {
            throw new MalformedPdfException(at, "expected a number");
        }
        return value;
    }

    PdfValue value() throws MalformedPdfException {
        return value(0);
    }

    PdfValue.Dictionary dictionary() throws MalformedPdfException {
        skipWhite();
        int start = at;
        if (value() instanceof PdfValue.Dictionary found) {
            return found;
        }
        throw new MalformedPdfException(start, "expected a dictionary");
    }

    private PdfValue value(int depth) throws MalformedPdfException {
        if (depth > DEEPEST) {
            throw new MalformedPdfException(at, "values nested more than " + DEEPEST + " deep");
        }
        skipWhite();
        return switch (peek(0)) {
            case '/' -> name();
            case '[' -> array(depth);
            case '(' -> literalText();
            case '<' -> peek(1) == '<' ? dictionary(depth) : hexText();
            default -> word();
        };
    }

    private PdfValue word() throws MalformedPdfException {
        int start = at;
        while (at < file.length && isRegular(file[at])) {
            at++;
        }
        String word = new String(file, start, at - start, StandardCharsets.ISO_8859_1);
        if (word.matches("\\d{1,15}")) {
            return numberOrReference(word, start);
        }
        if (word.matches("-\\d{1,15}")) {
            return new PdfValue.Whole(Long.parseLong(word), start, at);
        }
        if (word.matches("[+-]?(\\d+\\.\\d*|\\.\\d+)|true|false|null")) {
            return new PdfValue.Other(start, at);
        }
        throw new MalformedPdfException(start, "expected a value");
    }

    private PdfValue numberOrReference(String word, int start) {
        int afterNumber = at;
        if (word.length() <= 9 && at + 4 <= file.length && startsWith(" 0 R")) {
            at += 4;
            if (at == file.length || !isRegular(file[at])) {
                return new PdfValue.Reference(Integer.parseInt(word), start, at);
            }
        }
        at = afterNumber;
        return new PdfValue.Whole(Long.parseLong(word), start, at);
    }

    private PdfValue.Name name() throws MalformedPdfException {
        int start = at++;
        StringBuilder text = new StringBuilder();
        while (at < file.length && isRegular(file[at])) {
            if (file[at] == '#') {
                text.append((char) ((hexDigit(peek(1)) << 4) | hexDigit(peek(2))));
                at += 3;
            } else {
                text.append((char) (file[at++] & 0xFF));
            }
        }
        return new PdfValue.Name(text.toString(), start, at);
    }

    private PdfValue.Array array(int depth) throws MalformedPdfException {
        int start = at++;
        List<PdfValue> items = new ArrayList<>();
        skipWhite();
        while (peek(0) != ']') {
            items.add(value(depth + 1));
            skipWhite();
        }
        at++;
        return new PdfValue.Array(items, start, at);
    }

    private PdfValue.Dictionary dictionary(int depth) throws MalformedPdfException {
        int start = at;
        at += 2;
        Map<String, PdfValue> entries = new HashMap<>();
        skipWhite();
        while (peek(0) != '>') {
            if (peek(0) != '/') {
                throw new MalformedPdfException(at, "expected a name in a dictionary");
            }
            String key = name().text();
            if (entries.put(key, value(depth + 1)) != null) {
                throw new MalformedPdfException(at, "the entry /" + key + " comes twice in a dictionary");
            }
            skipWhite();
        }
        expect(">>");
        return new PdfValue.Dictionary(entries, start, at);
    }

    private PdfValue.Text hexText() throws MalformedPdfException {
        int start = at++;
        StringBuilder octets = new StringBuilder();
        while (peek(0) != '>') {
            octets.append((char) ((hexDigit(peek(0)) << 4) | hexDigit(peek(1))));
            at += 2;
        }
        at++;
        return new PdfValue.Text(octets.toString(), true, start, at);
    }

    private PdfValue.Text literalText() throws MalformedPdfException {
        int start = at++;
        StringBuilder octets = new StringBuilder();
        int open = 1;
        while (true) {
            int octet = peek(0);
            at++;
            if (octet == '\\') {
                escaped(octets);
                continue;
            }
            if (octet == '(') {
                open++;
            } else if (octet == ')' && --open == 0) {
                return new PdfValue.Text(octets.toString(), false, start, at);
            }
            octets.append((char) octet);
        }
    }

    private void escaped(StringBuilder octets) throws MalformedPdfException {
        int octet = peek(0);
        at++;
        switch (octet) {
            case 'n' -> octets.append('\n');
            case 'r' -> octets.append('\r');
            case 't' -> octets.append('\t');
            case 'b' -> octets.append('\b');
            case 'f' -> octets.append('\f');
            case '(', ')', '\\' -> octets.append((char) octet);
            default -> throw new MalformedPdfException(at - 1, "an unknown escape in a string");
        }
    }

    private int peek(int ahead) throws MalformedPdfException {
        if (at + ahead >= file.length) {
            throw new MalformedPdfException(file.length, "the file ends inside a value");
        }
        return file[at + ahead] & 0xFF;
    }

    private int hexDigit(int octet) throws MalformedPdfException {
        int digit = Character.digit(octet, 16);
        if (digit < 0) {
            throw new MalformedPdfException(at, "expected a hexadecimal digit");
        }
        return digit;
    }

    private static boolean isWhite(byte octet) {
        return octet == ' ' || octet == '\n' || octet == '\r' || octet == '\t' || octet == '\f' || octet == 0;
    }

    private static boolean isRegular(byte octet) {
        return !isWhite(octet) && "()<>[]{}/%".indexOf(octet & 0xFF) < 0;
    }
}
