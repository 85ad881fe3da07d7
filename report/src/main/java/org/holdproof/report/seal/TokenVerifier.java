package org.holdproof.report.seal;

import java.io.ByteArrayOutputStream;
import java.io.OutputStream;
import org.bouncycastle.asn1.x509.AlgorithmIdentifier;
import org.bouncycastle.cert.X509CertificateHolder;
import org.bouncycastle.operator.ContentVerifier;
import org.bouncycastle.operator.ContentVerifierProvider;

/** Lends a {@link SignatureCheck} to the library that reads timestamp tokens. */
record TokenVerifier(X509CertificateHolder holder, SignatureCheck signatures) implements ContentVerifierProvider {
    @Override
    public boolean hasAssociatedCertificate() {
        return true;
    }

    @Override
    public X509CertificateHolder getAssociatedCertificate() {
        return holder;
    }

    @Override
    public ContentVerifier get(AlgorithmIdentifier algorithm) {
        ByteArrayOutputStream signed = new ByteArrayOutputStream();
        return new ContentVerifier() {
            @Override
            public AlgorithmIdentifier getAlgorithmIdentifier() {
                return algorithm;
            }

            @Override
            public OutputStream getOutputStream() {
                return signed;
            }

            @Override
            public boolean verify(byte[] expected) {
                return signatures.holds(holder.getSubjectPublicKeyInfo(), algorithm, signed.toByteArray(), expected);
            }
        };
    }
}
