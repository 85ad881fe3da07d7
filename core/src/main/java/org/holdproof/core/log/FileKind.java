package org.holdproof.core.log;

import java.util.List;

/** Tells a file that is no text from its first bytes. */
final class FileKind {
    private record Mark(String what, String remedy, int... bytes) {
        boolean opens(byte[] head) {
            if (head.length < bytes.length) {
                return false;
            }
            for (int i = 0; i < bytes.length; i++) {
                if ((head[i] & 0xff) != bytes[i]) {
                    return false;
                }
            }
            return true;
        }
    }

    private static final List<Mark> MARKS = List.of(
            new Mark("a PDF document", "Export the readings from the logger as CSV.", '%', 'P', 'D', 'F'),
            new Mark(
                    "a spreadsheet or a ZIP archive",
                    "Open it and save the sheet with the readings as CSV.",
                    'P',
                    'K',
                    3,
                    4),
            new Mark(
                    "an old binary spreadsheet",
                    "Open it and save the sheet with the readings as CSV.",
                    0xd0,
                    0xcf,
                    0x11,
                    0xe0),
            new Mark("a compressed file", "Unpack it and give the CSV file inside.", 0x1f, 0x8b),
            new Mark("a picture", "Export the readings from the logger as CSV.", 0x89, 'P', 'N', 'G'),
            new Mark("a picture", "Export the readings from the logger as CSV.", 0xff, 0xd8, 0xff));

    private FileKind() {}

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
                && ((head[0] & 0xff) == 0xff && (head[1] & 0xff) == 0xfe
                        || (head[0] & 0xff) == 0xfe && (head[1] & 0xff) == 0xff);
        for (int i = 0; i < head.length && !utf16; i++) {
            if (head[i] == 0) {
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
