package org.holdproof.report.draw;

import java.awt.Color;
import org.holdproof.core.verdict.Verdict;

/** The report's colours. None of them says anything that a word or a shape does not say too. */
public final class Palette {
    public static final Color INK = new Color(0x1A242C);
    public static final Color SOFT = new Color(0x515D66);
    public static final Color RULE = new Color(0xBCC5CB);
    public static final Color GRID = new Color(0xE1E6E9);
    public static final Color TINT = new Color(0xF1F3F5);
    public static final Color PAPER = Color.WHITE;

    public static final Color CORE = new Color(0x0F3557);
    public static final Color TOLERANCE = new Color(0xC3D6E6);
    public static final Color OTHER_CORE = new Color(0x6C93B5);
    public static final Color BATH = new Color(0x21788C);
    public static final Color AIR = new Color(0x8B6A2F);
    public static final Color LIMIT = new Color(0x7A1F4B);
    public static final Color HATCH = new Color(0x8A949B);

    public static final Color COOKING = new Color(0xF6E7D3);
    public static final Color KEEPING_HOT = new Color(0xFBF1DE);
    public static final Color COOLING = new Color(0xDCEAF3);
    public static final Color BETWEEN = new Color(0xE9ECEE);

    private Palette() {}

    /** The colour that goes with a verdict's word and shape. */
    public static Color of(Verdict verdict) {
        return switch (verdict) {
            case MET -> new Color(0x14603A);
            case NOT_PROVEN -> new Color(0x8A5000);
            case NOT_MET -> new Color(0x9A1B1B);
        };
    }
}
