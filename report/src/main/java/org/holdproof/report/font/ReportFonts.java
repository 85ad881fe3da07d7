package org.holdproof.report.font;

import com.lowagie.text.DocumentException;
import com.lowagie.text.pdf.BaseFont;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.security.SecureRandom;

/**
 * The three faces of a report: Liberation Sans regular and bold, Liberation Mono for digests. Each is embedded as a
 * subset under Identity-H without a CIDSet, as PDF/A asks, and carries the same subset name in every file, so that the
 * same report comes out byte for byte the same.
 */
public final class ReportFonts {
    /** Stands where a text holds a character the faces cannot show. */
    public static final char UNSHOWABLE = '\u25A1';

    private final BaseFont regular;
    private final BaseFont bold;
    private final BaseFont mono;

    private ReportFonts(BaseFont regular, BaseFont bold, BaseFont mono) {
        this.regular = regular;
        this.bold = bold;
        this.mono = mono;
    }

    /**
     * Loads the faces. Use one set for one file.
     *
     * @throws UncheckedIOException if a face is missing from the class path or cannot be read
     */
    public static ReportFonts load() {
        return new ReportFonts(
                face("LiberationSans-Regular.ttf", 1),
                face("LiberationSans-Bold.ttf", 2),
                face("LiberationMono-Regular.ttf", 3));
    }

    public BaseFont regular() {
        return regular;
    }

    public BaseFont bold() {
        return bold;
    }

    public BaseFont mono() {
        return mono;
    }

    /**
     * A text as the faces can show it: controls and line ends become blanks, every other character without a glyph
     * becomes {@link #UNSHOWABLE}. (A missing glyph would otherwise vanish without a trace.)
     */
    public String showable(String text) {
        if (text.chars().allMatch(character -> character >= ' ' && character <= '~')) {
            return text;
        }
        StringBuilder shown = new StringBuilder(text.length());
        text.codePoints().forEach(character -> {
            if (Character.isWhitespace(character) || Character.isISOControl(character)) {
                shown.append(' ');
            } else if (Character.getType(character) == Character.FORMAT) {
                return;
            } else if (Character.isBmpCodePoint(character)
                    && regular.charExists(character)
                    && bold.charExists(character)) {
                shown.appendCodePoint(character);
            } else {
                shown.append(UNSHOWABLE);
            }
        });
        return shown.toString();
    }

    private static BaseFont face(String file, int number) {
        try (InputStream resource = ReportFonts.class.getResourceAsStream("/liberation/" + file)) {
            if (resource == null) {
                throw new IOException("the font " + file + " is not on the class path");
            }
            BaseFont face = BaseFont.createFont(
                    file, BaseFont.IDENTITY_H, BaseFont.EMBEDDED, false, resource.readAllBytes(), new byte[0]);
            face.setSubset(true);
            face.setIncludeCidSet(false);
            face.setSecureRandom(new SubsetNaming(number));
            return face;
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        } catch (DocumentException unusable) {
            throw new UncheckedIOException(new IOException("the font " + file + " cannot be used", unusable));
        }
    }

    /** The only draw OpenPDF makes from it names the subset: the same letter six times, one a face. */
    private static final class SubsetNaming extends SecureRandom {
        private final double draw;

        SubsetNaming(int number) {
            this.draw = (number + 0.5) / 26;
        }

        @Override
        public double nextDouble() {
            return draw;
        }
    }
}
