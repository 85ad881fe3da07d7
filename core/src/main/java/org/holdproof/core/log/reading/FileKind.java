package org.holdproof.core.log.reading;

import java.util.List;

/** Tells a file that is no text from its first bytes. */
final class FileKind {
    /** The first bytes of a kind of file, a character each. */
    private record Mark(String what, String bytes, String remedy) {
        boolean opens(byte[] head) {
            for (int i = 0; i < bytes.length(); i++) {
                if (i >= head.length || (head[i] & 0xff) != bytes.charAt(i)) {
                    return false;
                }
            }
            return true;
        }
    }

    private static final String EXPORT = "Export the readings from the logger as CSV.";
    private static final String SAVE = "Open it and save the sheet with the readings as CSV.";
    private static final List<Mark> MARKS = List.of(
            new Mark("a PDF document", "%PDF", EXPORT),
            new Mark("a spreadsheet or a ZIP archive", "PK\u0003\u0004", SAVE),
            new Mark("an old binary spreadsheet", "\u00d0\u00cf\u0011\u00e0", SAVE),
            new Mark("a compressed file", "\u001f\u008b", "Unpack it and give the CSV file inside."),
            new Mark("a picture", "\u0089PNG", EXPORT),
            new Mark("a picture", "\u00ff\u00d8\u00ff", EXPORT));

    private static final int SHORTEST_BLOCK = 8;

    private FileKind() {}

    private static boolean isBlock(byte[] head, int at) {
        int from = at;
        int end = at;
        while (from > 0 && head[from - 1] == 0) {
            from--;
        }
        while (end < head.length && head[end] == 0) {
            end++;
        }
        return end - from >= SHORTEST_BLOCK || end == head.length;
    }

    /**
     * @param head the first bytes of the file
     * @throws Refusal if the file is empty or no text
     */
    static void requireText(byte[] head) {
        if (head.length == 0) {
            throw new Refusal(0, 0, "an empty file", "a table of times and temperatures", "Export the log again.");
        }
        for (Mark mark : MARKS) {
            if (mark.opens(head)) {
                throw new Refusal(0, 0, mark.what(), "a CSV text file", mark.remedy());
            }
        }
        boolean utf16 = head.length >= 2
                && (((head[0] & 0xff) == 0xff && (head[1] & 0xff) == 0xfe)
                        || ((head[0] & 0xff) == 0xfe && (head[1] & 0xff) == 0xff));
        int run = 0;
        for (int i = 0; i < head.length && !utf16; i++) {
            run = head[i] == 0 ? run + 1 : 0;
            // a power cut leaves a block of zero bytes; text of two bytes a character has every other one zero
            boolean block = run >= SHORTEST_BLOCK || (run > 0 && isBlock(head, i));
            if (head[i] == 0 && !block) {
                throw new Refusal(
                        0,
                        0,
                        "binary data (a zero byte at byte " + (i + 1) + ")",
                        "a CSV text file",
                        "Export the log as CSV, in UTF-8 or in UTF-16 with a byte-order mark.");
            }
        }
    }
}
