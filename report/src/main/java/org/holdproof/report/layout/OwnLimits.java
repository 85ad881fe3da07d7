package org.holdproof.report.layout;

/** Each figure in which the tables a cook was judged by differ from the published ones. */
final class OwnLimits {
    private OwnLimits() {}

    static void lay(WordedReport matter, Flow flow) {
        matter.content().siteLimits().ifPresent(site -> {
            flow.section("Site's own limits", 60);
            flow.paragraph(PageLettering.STRONG, site.words());
            flow.paragraph(
                    PageLettering.TEXT,
                    "A site's own limits stand on the site's own approval, not on the authority whose profile they "
                            + "change. Each figure that differs:");
            site.differences().forEach(difference -> flow.paragraph(PageLettering.CELL, difference));
        });
    }
}
