package org.holdproof.cli.terminal;

import java.util.ArrayList;
import java.util.List;

/** Text broken at blanks to fit the screen. */
public final class Wrapped {
    private Wrapped() {}

    public static List<String> at(String text) {
        return at(text, Terminal.WIDTH);
    }

    static List<String> at(String text, int width) {
        List<String> lines = new ArrayList<>();
        StringBuilder line = new StringBuilder();
        for (String word : text.strip().split("\\s+", -1)) {
            if (!line.isEmpty() && line.length() + 1 + word.length() > width) {
                lines.add(line.toString());
                line.setLength(0);
            }
            line.append(line.isEmpty() ? "" : " ").append(word);
        }
        lines.add(line.toString());
        return lines;
    }

    static String cut(String text) {
        return text.length() <= Terminal.WIDTH ? text : text.substring(0, Terminal.WIDTH - 1) + "…";
    }
}
