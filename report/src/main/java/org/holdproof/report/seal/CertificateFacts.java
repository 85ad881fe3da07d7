package org.holdproof.report.seal;

import java.io.IOException;
import java.security.cert.CertificateEncodingException;
import java.security.cert.X509Certificate;
import java.time.Instant;
import org.bouncycastle.asn1.ASN1Encoding;
import org.bouncycastle.asn1.x500.RDN;
import org.bouncycastle.asn1.x500.X500Name;
import org.bouncycastle.asn1.x500.style.BCStyle;
import org.bouncycastle.asn1.x500.style.IETFUtils;
import org.bouncycastle.asn1.x509.Certificate;

/**
 * What a certificate claims.
 *
 * @param name the common name, or the whole subject where there is none
 * @param subject whom it names, the most general part last
 * @param issuer who is said to vouch for it, the most general part last
 * @param fingerprint over its DER bytes
 * @param selfSigned whether it is signed with its own key: then nobody but its owner vouches for it
 * @param notBefore begin of its validity
 * @param notAfter end of its validity
 */
public record CertificateFacts(
        String name,
        String subject,
        String issuer,
        Fingerprint fingerprint,
        boolean selfSigned,
        Instant notBefore,
        Instant notAfter) {

    /** @throws IllegalArgumentException if the certificate has no encoding or a validity that cannot be read */
    static CertificateFacts of(Certificate certificate, SignatureCheck signatures) {
        try {
            return new CertificateFacts(
                    name(certificate.getSubject()),
                    generalLast(certificate.getSubject()),
                    generalLast(certificate.getIssuer()),
                    Fingerprint.of(certificate.getEncoded(ASN1Encoding.DER)),
                    certificate.getSubject().equals(certificate.getIssuer())
                            && signatures.holds(
                                    certificate.getSubjectPublicKeyInfo(),
                                    certificate.getSignatureAlgorithm(),
                                    certificate.getTBSCertificate().getEncoded(ASN1Encoding.DER),
                                    certificate.getSignature().getOctets()),
                    certificate.getStartDate().getDate().toInstant(),
                    certificate.getEndDate().getDate().toInstant());
        } catch (IOException | IllegalStateException unreadable) {
            throw new IllegalArgumentException("a certificate that cannot be read", unreadable);
        }
    }

    /** @throws IllegalArgumentException if the certificate has no encoding */
    static CertificateFacts of(X509Certificate certificate, SignatureCheck signatures) {
        try {
            return of(Certificate.getInstance(certificate.getEncoded()), signatures);
        } catch (CertificateEncodingException unencodable) {
            throw new IllegalArgumentException("a certificate without an encoding", unencodable);
        }
    }

    private static String name(X500Name subject) {
        RDN[] names = subject.getRDNs(BCStyle.CN);
        return names.length == 0
                ? generalLast(subject)
                : IETFUtils.valueToString(names[0].getFirst().getValue()).replace("\\", "");
    }

    /** The order people read names in (RFC 2253, 2.1): the encoding's last part first. */
    private static String generalLast(X500Name name) {
        RDN[] parts = name.getRDNs();
        RDN[] turned = new RDN[parts.length];
        for (int i = 0; i < parts.length; i++) {
            turned[i] = parts[parts.length - 1 - i];
        }
        return new X500Name(turned).toString();
    }
}
