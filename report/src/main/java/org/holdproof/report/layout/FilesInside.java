package org.holdproof.report.layout;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.holdproof.report.archive.AttachedFile;
import org.holdproof.report.draw.Lettering;
import org.holdproof.report.draw.Structure;

/** The files that ride inside, with their digests, and the seal over them. */
final class FilesInside {
    private static final Lettering TEXT = PageLettering.CELL;
    private static final Lettering DIGEST = PageLettering.CODE;
    private static final Lettering PARAGRAPH = PageLettering.TEXT;

    private FilesInside() {}

    static void lay(WordedReport matter, Flow flow) {
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
                List<List<ColumnSlice>> cells = new ArrayList<>();
                cells.add(wrap(flow, TEXT, file.name(), rest * 0.45));
                cells.add(wrap(flow, TEXT, file.description(), rest * 0.55));
                cells.add(List.of(ColumnSlice.lineRight(TEXT, String.format(Locale.ROOT, "%,d", file.bytes()))));
                cells.add(List.of(
                        ColumnSlice.line(DIGEST, file.sha256().substring(0, 32)),
                        ColumnSlice.line(DIGEST, file.sha256().substring(32))));
                table.row(cells);
            }
            table.lay(flow);
        }
        flow.paragraph(
                PARAGRAPH,
                "To open them: in most PDF viewers under Attachments, often a paper clip; or with pdfdetach -saveall "
                        + "REPORT.pdf, and then sha256sum --check SHA256SUMS.");
        seal(matter, flow);
        flow.paragraph(
                PARAGRAPH,
                "To see that nothing changed and to work every figure out again from the files inside: holdproof recheck "
                        + "REPORT.pdf, or drop it on the page that holdproof page opens, which needs no network.");
    }

    private static void seal(WordedReport matter, Flow flow) {
        flow.subsection("The seal", 90);
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
                                .orElse("The time of sealing is the signer's own clock; nobody else vouches for it."));
        flow.paragraph(
                PARAGRAPH,
                "A PDF viewer may say that the signature's validity is unknown, or its issuer or identity not trusted. "
                        + "That is as it should be: a kitchen makes its certificate itself, and no authority that the "
                        + "viewer knows vouches for it. The certificate is known by its fingerprint, which the kitchen "
                        + "gives you by another way than this file: on paper, or read out over the telephone. A viewer "
                        + "that says the document was changed or the signature is invalid means what it says: do not "
                        + "rely on the file.");
        flow.paragraph(PARAGRAPH, "Fingerprint of the certificate, SHA-256, in groups to be read aloud:");
        Structure.Part fingerprint = flow.part().add(Structure.Tag.PARAGRAPH);
        wrap(flow, PageLettering.CODE, FingerprintWords.grouped(seal.certificateSha256()), flow.width())
                .forEach(slice -> flow.put(fingerprint, slice));
        flow.skip(4);
    }

    private static List<ColumnSlice> wrap(Flow flow, Lettering lettering, String text, double width) {
        return flow.type().wrap(lettering, text, width).stream()
                .map(line -> ColumnSlice.line(lettering, line))
                .toList();
    }
}
