package org.holdproof.core.log.reading;

/** The one decimal mark of a log's temperatures, once a figure has shown it. */
final class DecimalMark {
    private char mark;

    /** Takes the mark of a figure, 0 where it has none; false if it is not the one of the figures before. */
    boolean agrees(char used) {
        if (used == 0 || used == mark) {
            return true;
        }
        if (mark != 0) {
            return false;
        }
        mark = used;
        return true;
    }

    String words() {
        return mark == '.' ? "a point" : "a comma";
    }
}
