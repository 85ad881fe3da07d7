package org.holdproof.cli.terminal;

/**
 * A picture of dots in characters: eight braille dots to a character where the terminal shows them, two ASCII dots
 * ({@code '} above, {@code .} below) where it does not.
 */
final class DotCanvas {
    /** Unicode's braille patterns number their dots down the left column, then the right, the bottom row last. */
    private static final int[][] BRAILLE = {{0x01, 0x08}, {0x02, 0x10}, {0x04, 0x20}, {0x40, 0x80}};

    private static final char BRAILLE_BLANK = '\u2800';

    private final boolean unicode;
    private final int columns;
    private final int rows;
    private final boolean[][] dots;

    DotCanvas(int columns, int rows, boolean unicode) {
        this.unicode = unicode;
        this.columns = columns;
        this.rows = rows;
        dots = new boolean[rows * (unicode ? 4 : 2)][columns * (unicode ? 2 : 1)];
    }

    int dotsAcross() {
        return dots[0].length;
    }

    int dotsDown() {
        return dots.length;
    }

    /** Draws a straight line between two dots, counted from the top left. */
    void line(int fromX, int fromY, int toX, int toY) {
        int steps = Math.max(Math.abs(toX - fromX), Math.abs(toY - fromY));
        for (int step = 0; step <= steps; step++) {
            double part = steps == 0 ? 0 : (double) step / steps;
            dots[(int) Math.round(fromY + part * (toY - fromY))][(int) Math.round(fromX + part * (toX - fromX))] = true;
        }
    }

    /** Draws a level line of single dots, some way apart. */
    void dotted(int y, int apart) {
        for (int x = 0; x < dotsAcross(); x += apart) {
            dots[y][x] = true;
        }
    }

    /** One row of characters; {@code blank} stands where no dot is. */
    String row(int row, char blank) {
        StringBuilder text = new StringBuilder(columns);
        for (int column = 0; column < columns; column++) {
            text.append(unicode ? braille(row, column, blank) : ascii(row, column, blank));
        }
        return text.toString();
    }

    int rows() {
        return rows;
    }

    private char braille(int row, int column, char blank) {
        int pattern = 0;
        for (int down = 0; down < 4; down++) {
            for (int across = 0; across < 2; across++) {
                if (dots[row * 4 + down][column * 2 + across]) {
                    pattern |= BRAILLE[down][across];
                }
            }
        }
        return pattern == 0 ? blank : (char) (BRAILLE_BLANK + pattern);
    }

    private char ascii(int row, int column, char blank) {
        boolean upper = dots[row * 2][column];
        boolean lower = dots[row * 2 + 1][column];
        if (upper) {
            return lower ? ':' : '\'';
        }
        return lower ? '.' : blank;
    }
}
