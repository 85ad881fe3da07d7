package org.holdproof.report.recheck;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.math.BigInteger;
import java.nio.charset.StandardCharsets;
import java.security.interfaces.ECPublicKey;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import java.util.zip.Deflater;
import org.bouncycastle.asn1.ASN1Encodable;
import org.bouncycastle.asn1.ASN1Encoding;
import org.bouncycastle.asn1.ASN1Integer;
import org.bouncycastle.asn1.ASN1OctetString;
import org.bouncycastle.asn1.ASN1Primitive;
import org.bouncycastle.asn1.ASN1Sequence;
import org.bouncycastle.asn1.DEROctetString;
import org.bouncycastle.asn1.DERSequence;
import org.bouncycastle.asn1.x509.Certificate;
import org.holdproof.report.archive.Attachment;
import org.holdproof.report.pdf.MalformedPdfException;
import org.holdproof.report.pdf.PdfObjects;
import org.holdproof.report.pdf.PdfValue;
import org.holdproof.report.seal.CanonicalCms;
import org.holdproof.report.seal.SealPlace;
import org.holdproof.report.seal.SigningKey;

/** Ways to alter a sealed file that take more than one byte. */
final class Tampering {
    private Tampering() {}

    /** Where the first figure of the CMS stands. */
    static int sealStart(byte[] file) {
        try {
            PdfValue.Dictionary signature =
                    SealPlace.signatures(PdfObjects.read(file)).get(0);
            return SealPlace.within(signature).orElseThrow().contents().start() + 1;
        } catch (MalformedPdfException impossible) {
            throw new IllegalArgumentException(impossible);
        }
    }

    /** How many figures the CMS has, read from its own length. */
    static int sealFigures(byte[] file) {
        String length = new String(file, sealStart(file) + 4, 4, StandardCharsets.US_ASCII);
        return 2 * (4 + Integer.parseInt(length, 16));
    }

    static byte[] cms(byte[] file) {
        return HexFormat.of().parseHex(new String(file, sealStart(file), sealFigures(file), StandardCharsets.US_ASCII));
    }

    static byte[] withCms(byte[] file, byte[] cms) {
        byte[] altered = file.clone();
        int start = sealStart(file);
        Arrays.fill(altered, start, start + 2 * SealPlace.ROOM, (byte) '0');
        byte[] figures = HexFormat.of().formatHex(cms).getBytes(StandardCharsets.US_ASCII);
        System.arraycopy(figures, 0, altered, start, figures.length);
        return altered;
    }

    /** Turns (r, s) of an ECDSA signature into (r, n - s), which anybody can. */
    static byte[] withTwinSignature(byte[] file, SigningKey key) throws Exception {
        CanonicalCms cms = CanonicalCms.parse(cms(file));
        BigInteger order =
                ((ECPublicKey) key.certificate().getPublicKey()).getParams().getOrder();
        ASN1Sequence numbers = ASN1Sequence.getInstance(
                ASN1Primitive.fromByteArray(cms.signature().getOctets()));
        BigInteger s = ASN1Integer.getInstance(numbers.getObjectAt(1)).getValue();
        byte[] twin = new DERSequence(new ASN1Encodable[] {numbers.getObjectAt(0), new ASN1Integer(order.subtract(s))})
                .getEncoded(ASN1Encoding.DER);
        return withCms(file, rebuilt(cms, cms.certificates(), new DEROctetString(twin)));
    }

    static byte[] withCertificateOf(byte[] file, SigningKey other) throws Exception {
        CanonicalCms cms = CanonicalCms.parse(cms(file));
        Certificate foreign = Certificate.getInstance(other.certificate().getEncoded());
        return withCms(file, rebuilt(cms, List.of(foreign), cms.signature()));
    }

    static byte[] withoutTimestamp(byte[] file) throws Exception {
        CanonicalCms cms = CanonicalCms.parse(cms(file));
        return withCms(file, rebuilt(cms, cms.certificates(), cms.signature()));
    }

    private static byte[] rebuilt(CanonicalCms cms, List<Certificate> certificates, ASN1OctetString signature)
            throws CanonicalCms.Unfit {
        return new CanonicalCms(
                        cms.contentType(),
                        cms.content(),
                        certificates,
                        cms.digest(),
                        cms.pss(),
                        cms.signedAttributes(),
                        signature,
                        Optional.empty())
                .encode();
    }

    /** Exchanges an attachment's content, which must take as many bytes deflated, and leaves everything else. */
    static byte[] withContent(byte[] file, Attachment attachment, String content) throws IOException {
        byte[] was = deflated(attachment.content());
        byte[] becomes = deflated(content.getBytes(StandardCharsets.UTF_8));
        assertThat(becomes).hasSameSizeAs(was);
        int at = new String(file, StandardCharsets.ISO_8859_1).indexOf(new String(was, StandardCharsets.ISO_8859_1));
        assertThat(at).isPositive();
        byte[] altered = file.clone();
        System.arraycopy(becomes, 0, altered, at, becomes.length);
        return altered;
    }

    private static byte[] deflated(byte[] content) {
        Deflater deflater = new Deflater(6);
        deflater.setInput(content);
        deflater.finish();
        byte[] room = new byte[content.length + 100];
        int length = deflater.deflate(room);
        deflater.end();
        return Arrays.copyOf(room, length);
    }
}
