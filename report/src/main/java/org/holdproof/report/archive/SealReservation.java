package org.holdproof.report.archive;

import com.lowagie.text.pdf.PdfArray;
import com.lowagie.text.pdf.PdfDictionary;
import com.lowagie.text.pdf.PdfLiteral;
import com.lowagie.text.pdf.PdfName;
import com.lowagie.text.pdf.PdfNumber;
import org.holdproof.report.seal.SealPlace;

/** The empty place a file keeps for its seal. */
final class SealReservation {
    private SealReservation() {}

    /** A signature dictionary (ISO 32000-1, 12.8; ETSI EN 319 142-1) that certifies: no change permitted. */
    static PdfDictionary ofRoom(int room) {
        PdfDictionary transform = new PdfDictionary(new PdfName("TransformParams"));
        transform.put(PdfName.V, new PdfName("1.2"));
        transform.put(PdfName.P, new PdfNumber(1));
        PdfDictionary reference = new PdfDictionary(new PdfName("SigRef"));
        reference.put(PdfName.TRANSFORMMETHOD, PdfName.DOCMDP);
        reference.put(PdfName.TRANSFORMPARAMS, transform);

        PdfDictionary seal = new PdfDictionary(PdfName.SIG);
        seal.put(PdfName.FILTER, PdfName.ADOBE_PPKLITE);
        seal.put(PdfName.SUBFILTER, new PdfName("ETSI.CAdES.detached"));
        seal.put(PdfName.M, new PdfLiteral("(" + SealPlace.NO_TIME + ")"));
        seal.put(PdfName.REASON, new PdfLiteral("(" + SealPlace.NOT_YET + ")"));
        seal.put(PdfName.REFERENCE, new PdfArray(reference));
        seal.put(PdfName.BYTERANGE, new PdfLiteral("[" + " ".repeat(SealPlace.RANGE_WIDTH - 2) + "]"));
        seal.put(PdfName.CONTENTS, new PdfLiteral("<" + "00".repeat(room) + ">"));
        return seal;
    }
}
