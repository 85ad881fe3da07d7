package org.holdproof.report.layout;

import org.holdproof.report.draw.Lettering;
import org.holdproof.report.draw.Palette;

/** How a report's text is set. Nothing that must be read is smaller than 8.5 points. */
final class PageLettering {
    static final Lettering TEXT = Lettering.plain(8.8);
    static final Lettering STRONG = Lettering.bold(8.8);
    static final Lettering CELL = Lettering.plain(8.5);
    static final Lettering CELL_STRONG = Lettering.bold(8.5);
    static final Lettering NOTE = Lettering.soft(8.5);
    static final Lettering HEAD = Lettering.bold(8.5).in(Palette.SOFT);
    static final Lettering CODE = Lettering.mono(8.5);

    private PageLettering() {}
}
