package org.holdproof.report.seal;

import java.security.GeneralSecurityException;
import java.security.cert.X509Certificate;
import org.bouncycastle.asn1.x500.RDN;
import org.bouncycastle.asn1.x500.X500Name;
import org.bouncycastle.asn1.x500.style.BCStyle;
import org.bouncycastle.asn1.x500.style.IETFUtils;

/** Whom a certificate names, and who vouches for it. */
final class SignerName {
    private SignerName() {}

    /** The common name, or the whole subject where there is none. */
    static String of(X509Certificate certificate) {
        RDN[] names = X500Name.getInstance(certificate.getSubjectX500Principal().getEncoded())
                .getRDNs(BCStyle.CN);
        return names.length == 0
                ? certificate.getSubjectX500Principal().getName()
                : IETFUtils.valueToString(names[0].getFirst().getValue()).replace("\\", "");
    }

    static boolean isSelfSigned(X509Certificate certificate) {
        try {
            certificate.verify(certificate.getPublicKey());
            return certificate.getSubjectX500Principal().equals(certificate.getIssuerX500Principal());
        } catch (GeneralSecurityException otherwise) {
            return false;
        }
    }
}
