package org.holdproof.report.layout;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.holdproof.report.AttachedFile;
import org.holdproof.report.SealFacts;
import org.holdproof.report.draw.Lettering;

/** The files that ride inside, with their digests, and the seal over them. */
final class FilesInside {
    private static final Lettering TEXT = Lettering.plain(7.8);
    private static final Lettering DIGEST = Lettering.mono(6.8);
    private static final Lettering PARAGRAPH = Lettering.plain(8.2);

    private FilesInside() {}

    static void lay(Matter matter, Flow flow) {
        flow.section("Files inside this report, and its seal", 70);
        List<AttachedFile> files = matter.content().attachments();
        if (files.isEmpty()) {
            flow.paragraph(PARAGRAPH, "No file rides inside this report.");
        } else {
            double size = 62;
            double digest = 34 * flow.type().width(DIGEST, "0");
            double rest = flow.width() - size - digest - 3 * Table.GUTTER;
            Table table = new Table(List.of(
                    Table.Column.of("File", rest * 0.45),
                    Table.Column.of("What it is", rest * 0.55),
                    Table.Column.toTheRight("Bytes", size),
                    Table.Column.of("SHA-256", digest)));
            for (AttachedFile file : files) {
                List<List<Strip>> cells = new ArrayList<>();
                cells.add(wrap(flow, TEXT, file.name(), rest * 0.45));
                cells.add(wrap(flow, TEXT, file.description(), rest * 0.55));
                cells.add(List.of(Strip.lineRight(TEXT, String.format(Locale.ROOT, "%,d", file.bytes()))));
                cells.add(List.of(
                        Strip.line(DIGEST, file.sha256().substring(0, 32)),
                        Strip.line(DIGEST, file.sha256().substring(32))));
                table.row(cells);
            }
            table.lay(flow);
        }
        if (matter.content().seal().isEmpty()) {
            flow.paragraph(PARAGRAPH, "This report is not sealed: nothing in it shows whether it was changed.");
            return;
        }
        SealFacts seal = matter.content().seal().get();
        flow.paragraph(
                PARAGRAPH,
                "Sealed by " + seal.signer() + ". No change is allowed after sealing. "
                        + seal.timestampAuthority()
                                .map(authority -> "The time is stamped by " + authority + ".")
                                .orElse("The time of sealing is the signer's own clock; nobody else vouches for it.")
                        + " A kitchen's own certificate is not vouched for by an authority: it is known by its fingerprint, "
                        + "which the kitchen gives you by another way than this file. Fingerprint, SHA-256:");
        wrap(flow, Lettering.mono(8), seal.certificateSha256().toUpperCase(Locale.ROOT), flow.width())
                .forEach(flow::put);
        flow.skip(4);
        flow.paragraph(
                PARAGRAPH,
                "To see that nothing changed and to work every figure out again from the files inside: holdproof recheck "
                        + "REPORT.pdf");
    }

    private static List<Strip> wrap(Flow flow, Lettering lettering, String text, double width) {
        return flow.type().wrap(lettering, text, width).stream()
                .map(line -> Strip.line(lettering, line))
                .toList();
    }
}
