package org.holdproof.report.draw;

import com.lowagie.text.pdf.BaseFont;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import org.holdproof.report.font.ReportFonts;

/** Measures and breaks text. */
public final class Typesetter {
    private static final String ELLIPSIS = "…";
    private static final double ROUNDING = 1e-3;
    private static final Pattern FIGURE = Pattern.compile("[0-9]$");
    private static final Pattern UNIT = Pattern.compile("(°[CF]|min|h|s|d|mm|kg|g|lb|in|%|log10|logs?)[).,;:]*");

    private final ReportFonts fonts;

    public Typesetter(ReportFonts fonts) {
        this.fonts = fonts;
    }

    BaseFont font(Face face) {
        return switch (face) {
            case REGULAR -> fonts.regular();
            case BOLD -> fonts.bold();
            case MONO -> fonts.mono();
        };
    }

    /** The text as the faces can show it. */
    public String showable(String text) {
        return fonts.showable(text);
    }

    /** The text's width, in points. */
    public double width(Lettering lettering, String text) {
        return font(lettering.face()).getWidthPoint(showable(text), (float) lettering.size());
    }

    /**
     * Breaks a text into lines no wider than this, at blanks, and inside a word only where the word alone is wider. An
     * empty text has no lines.
     */
    public List<String> wrap(Lettering lettering, String text, double width) {
        List<String> lines = new ArrayList<>();
        double blank = width(lettering, " ");
        StringBuilder line = new StringBuilder();
        double used = 0;
        for (String word : words(showable(text).strip())) {
            // Nothing is kerned, so widths add up.
            double wide = width(lettering, word);
            if (line.length() > 0 && used + blank + wide <= width - ROUNDING) {
                line.append(' ').append(word);
                used += blank + wide;
                continue;
            }
            if (line.length() > 0) {
                lines.add(line.toString());
            }
            String rest = word;
            while (wide > width) {
                int fits = fitting(lettering, rest, width);
                lines.add(rest.substring(0, fits));
                rest = rest.substring(fits);
                wide = width(lettering, rest);
            }
            line = new StringBuilder(rest);
            used = wide;
        }
        if (line.length() > 0) {
            lines.add(line.toString());
        }
        return lines;
    }

    /** The words of a text; a figure and its unit are one. */
    private static List<String> words(String text) {
        List<String> words = new ArrayList<>();
        for (String word : text.split(" +", -1)) {
            int last = words.size() - 1;
            if (last >= 0
                    && FIGURE.matcher(words.get(last)).find()
                    && UNIT.matcher(word).matches()) {
                words.set(last, words.get(last) + " " + word);
            } else {
                words.add(word);
            }
        }
        return words;
    }

    /** The text, or as much of its beginning as fits with an ellipsis. */
    public String shorten(Lettering lettering, String text, double width) {
        String whole = showable(text);
        if (width(lettering, whole) <= width) {
            return whole;
        }
        int fits = fitting(lettering, whole, width - width(lettering, ELLIPSIS));
        return whole.substring(0, fits).stripTrailing() + ELLIPSIS;
    }

    /** How many characters fit, at least one. */
    private int fitting(Lettering lettering, String text, double width) {
        int fits = 1;
        while (fits < text.length() && width(lettering, text.substring(0, fits + 1)) <= width) {
            fits++;
        }
        return fits;
    }
}
