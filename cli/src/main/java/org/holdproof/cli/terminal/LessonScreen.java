package org.holdproof.cli.terminal;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.holdproof.core.lesson.CountCourse;
import org.holdproof.core.lesson.InWords;
import org.holdproof.core.lesson.Lesson;
import org.holdproof.core.lesson.LessonBath;
import org.holdproof.core.lesson.WholeLogs;

/** The lesson's answer on one screen of 80 columns: one line a bath, then what no bath undoes. */
public record LessonScreen(Lesson lesson) {
    /** At most {@value Terminal#HEIGHT} lines with the one on what was written. */
    public List<String> lines() {
        List<String> lines = new ArrayList<>();
        lines.add("The same " + lesson.setup().cut().title() + ", "
                + InWords.figure(lesson.setup().thicknessMillimetres()) + " mm thick, cold from the store into "
                + lesson.baths().size() + " baths for " + InWords.figure(lesson.hours()) + " h");
        lines.add(Lesson.DIRECTION);
        lines.add("");
        lines.add(line("", "core", "C. perfringens", "(logs)", "Salmonella", "S. aureus", "published"));
        lines.add(line(
                "bath",
                "near",
                "most",
                "after " + InWords.figure(lesson.hours()) + " h",
                "most end",
                "most end",
                "row met"));
        lesson.baths().forEach(bath -> lines.add(line(bath)));
        lines.add("Lag to no lag, else the high end; −7: or lower. Too slow: come-up over 6 h.");
        lines.add("C. perfringens stops growing somewhere from " + lesson.bandText() + ", by source.");
        lines.add("Lowest published row for " + lesson.setup().cut().species() + ": "
                + InWords.boundary(lesson.rows().get(0).at()) + " for "
                + lesson.rows().get(0).printedTime() + ".");
        lines.add("S. aureus toxin, once made, stays: heat does not undo it.");
        lines.add("Spores stay in every bath: hence the fast chill.");
        lines.addAll(Answer.SAFETY);
        return lines;
    }

    private String line(LessonBath bath) {
        List<String> cells = new ArrayList<>();
        for (CountCourse course : bath.courses()) {
            if (course.lag().isPresent()) {
                cells.add(course.peakText());
                cells.add(course.endText());
            } else {
                cells.add(WholeLogs.figure(course.peakHigh()) + " " + WholeLogs.figure(course.endHigh()));
            }
        }
        return line(
                InWords.celsius(bath.celsius()),
                bath.nearMinutes().isPresent() ? hours(bath.nearMinutes().getAsDouble()) : "later",
                cells.get(0),
                cells.get(1),
                cells.get(2),
                cells.get(3),
                rowMet(bath));
    }

    private static String line(
            String bath, String near, String most, String end, String salmonella, String staphylococci, String row) {
        return String.format(
                        Locale.ROOT,
                        "%8s  %6s  %-14s %-12s %-10s %-10s %s",
                        bath,
                        near,
                        most,
                        end,
                        salmonella,
                        staphylococci,
                        row)
                .stripTrailing();
    }

    private String rowMet(LessonBath bath) {
        if (bath.celsius() < lesson.rows().get(0).at().celsius()) {
            return "never";
        }
        if (!bath.comeUpKept()) {
            return "too slow";
        }
        return bath.rowMet().map(met -> "after " + hours(met.minutes())).orElse("not yet");
    }

    private static String hours(double minutes) {
        return String.format(Locale.ROOT, "%.1f h", minutes / 60);
    }
}
