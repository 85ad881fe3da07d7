package org.holdproof.core.log.reading;

import java.util.List;

/** Tells a row of headings inside a file from a remark. */
final class SectionHeading {
    private SectionHeading() {}

    /** Whether a line is a row of headings, a clock among them, under any separator. */
    static boolean isOne(String line) {
        for (char separator : Table.SEPARATORS) {
            List<SampleRow> rows = SampleRow.rows(line, separator);
            if (!rows.isEmpty() && rows.get(0).width() >= 2 && Table.isHeading(rows.get(0), true)) {
                return true;
            }
        }
        return false;
    }
}
