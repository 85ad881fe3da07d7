package org.holdproof.report.seal;

import java.io.IOException;
import java.time.Instant;
import java.util.Arrays;
import java.util.Optional;
import org.bouncycastle.asn1.ASN1Primitive;
import org.bouncycastle.asn1.nist.NISTObjectIdentifiers;
import org.bouncycastle.asn1.pkcs.PKCSObjectIdentifiers;
import org.bouncycastle.asn1.tsp.TSTInfo;
import org.bouncycastle.cert.X509CertificateHolder;
import org.bouncycastle.cms.CMSException;
import org.bouncycastle.cms.CMSSignedData;
import org.bouncycastle.cms.DefaultCMSSignatureAlgorithmNameGenerator;
import org.bouncycastle.cms.SignerInformationVerifier;
import org.bouncycastle.operator.DefaultSignatureAlgorithmIdentifierFinder;
import org.bouncycastle.operator.bc.BcDigestCalculatorProvider;
import org.bouncycastle.tsp.TSPException;
import org.bouncycastle.tsp.TimeStampToken;

/**
 * What a timestamp authority vouches for: the seal existed at this time.
 *
 * @param time the authority's time
 * @param authority the name in its certificate
 * @param fingerprint its certificate's
 */
public record Timestamp(Instant time, String authority, Fingerprint fingerprint) {

    /** A token in canonical form, and what it says. */
    record Checked(Timestamp timestamp, ASN1Primitive token) {}

    /**
     * Checks a token: that it stamps this signature, is signed by the certificate it names, and that this certificate
     * is one for timestamps and was valid then. Whether the authority deserves trust is not judged here.
     */
    static Checked check(byte[] token, byte[] signature, SignatureCheck signatures) throws CanonicalCms.Unfit {
        CanonicalCms cms = CanonicalCms.parse(token);
        if (!PKCSObjectIdentifiers.id_ct_TSTInfo.equals(cms.contentType())
                || cms.content().isEmpty()) {
            throw new CanonicalCms.Unfit("it is not a timestamp token");
        }
        CanonicalCms bare = new CanonicalCms(
                cms.contentType(),
                cms.content(),
                cms.certificates(),
                cms.digest(),
                cms.pss(),
                cms.signedAttributes(),
                cms.signature(),
                Optional.empty());
        byte[] canonical = bare.encode();
        try {
            TSTInfo info = TSTInfo.getInstance(
                    ASN1Primitive.fromByteArray(cms.content().get().getOctets()));
            if (!NISTObjectIdentifiers.id_sha256.equals(
                            info.getMessageImprint().getHashAlgorithm().getAlgorithm())
                    || !Arrays.equals(info.getMessageImprint().getHashedMessage(), Digests.sha256(signature))) {
                throw new CanonicalCms.Unfit("it stamps something else than this seal");
            }
            X509CertificateHolder holder =
                    new X509CertificateHolder(cms.certificates().get(0));
            CertificateFacts certificate =
                    CertificateFacts.of(cms.certificates().get(0), signatures);
            TimeStampToken checked = new TimeStampToken(new CMSSignedData(canonical));
            checked.validate(new SignerInformationVerifier(
                    new DefaultCMSSignatureAlgorithmNameGenerator(),
                    new DefaultSignatureAlgorithmIdentifierFinder(),
                    new TokenVerifier(holder, signatures),
                    new BcDigestCalculatorProvider()));
            Timestamp timestamp = new Timestamp(
                    checked.getTimeStampInfo().getGenTime().toInstant(), certificate.name(), certificate.fingerprint());
            return new Checked(timestamp, ASN1Primitive.fromByteArray(canonical));
        } catch (TSPException | CMSException | IOException | IllegalArgumentException broken) {
            throw new CanonicalCms.Unfit("it does not hold (" + broken.getMessage() + ")");
        }
    }
}
