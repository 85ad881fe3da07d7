package org.holdproof.report.seal;

import java.io.IOException;
import java.io.OutputStream;
import java.security.GeneralSecurityException;
import java.security.KeyFactory;
import java.security.PublicKey;
import java.security.spec.X509EncodedKeySpec;
import org.bouncycastle.asn1.x509.AlgorithmIdentifier;
import org.bouncycastle.asn1.x509.SubjectPublicKeyInfo;
import org.bouncycastle.asn1.x9.X9ObjectIdentifiers;
import org.bouncycastle.operator.ContentVerifier;
import org.bouncycastle.operator.OperatorCreationException;
import org.bouncycastle.operator.RuntimeOperatorException;
import org.bouncycastle.operator.jcajce.JcaContentVerifierProviderBuilder;

/** Signatures checked by this Java's own providers. */
public final class PlatformSignatureCheck implements SignatureCheck {
    @Override
    public boolean holds(SubjectPublicKeyInfo key, AlgorithmIdentifier algorithm, byte[] signed, byte[] signature) {
        try {
            ContentVerifier verifier =
                    new JcaContentVerifierProviderBuilder().build(key(key)).get(algorithm);
            try (OutputStream content = verifier.getOutputStream()) {
                content.write(signed);
            }
            return verifier.verify(signature);
        } catch (GeneralSecurityException
                | OperatorCreationException
                | RuntimeOperatorException
                | IllegalArgumentException
                | IOException unfit) {
            return false;
        }
    }

    private static PublicKey key(SubjectPublicKeyInfo key) throws GeneralSecurityException, IOException {
        boolean elliptic =
                X9ObjectIdentifiers.id_ecPublicKey.equals(key.getAlgorithm().getAlgorithm());
        return KeyFactory.getInstance(elliptic ? "EC" : "RSA").generatePublic(new X509EncodedKeySpec(key.getEncoded()));
    }
}
