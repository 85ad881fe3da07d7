package org.holdproof.report.seal;

import java.io.IOException;
import java.math.BigInteger;
import java.security.GeneralSecurityException;
import java.security.Signature;
import java.security.cert.X509Certificate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import org.bouncycastle.asn1.ASN1Encodable;
import org.bouncycastle.asn1.ASN1Encoding;
import org.bouncycastle.asn1.ASN1Integer;
import org.bouncycastle.asn1.ASN1ObjectIdentifier;
import org.bouncycastle.asn1.ASN1OctetString;
import org.bouncycastle.asn1.ASN1Primitive;
import org.bouncycastle.asn1.ASN1Sequence;
import org.bouncycastle.asn1.DERNull;
import org.bouncycastle.asn1.DEROctetString;
import org.bouncycastle.asn1.DERSequence;
import org.bouncycastle.asn1.DERSet;
import org.bouncycastle.asn1.cms.Attribute;
import org.bouncycastle.asn1.cms.AttributeTable;
import org.bouncycastle.asn1.cms.CMSAttributes;
import org.bouncycastle.asn1.cms.CMSObjectIdentifiers;
import org.bouncycastle.asn1.ess.ESSCertIDv2;
import org.bouncycastle.asn1.ess.SigningCertificateV2;
import org.bouncycastle.asn1.nist.NISTObjectIdentifiers;
import org.bouncycastle.asn1.pkcs.PKCSObjectIdentifiers;
import org.bouncycastle.asn1.x509.AlgorithmIdentifier;
import org.bouncycastle.asn1.x509.Certificate;
import org.bouncycastle.asn1.x509.GeneralName;
import org.bouncycastle.asn1.x509.GeneralNames;
import org.bouncycastle.asn1.x509.IssuerSerial;
import org.bouncycastle.asn1.x509.SubjectPublicKeyInfo;
import org.bouncycastle.asn1.x9.ECNamedCurveTable;
import org.bouncycastle.asn1.x9.X962Parameters;
import org.bouncycastle.asn1.x9.X9ECParameters;
import org.bouncycastle.asn1.x9.X9ObjectIdentifiers;

/**
 * The CMS inside a seal: CAdES-detached as PAdES baseline asks (ETSI EN 319 142-1, clause 6.3), with content type,
 * message digest and signing-certificate-v2 as the only signed attributes; the claimed time stands in the PDF.
 */
public final class SealCms {
    private SealCms() {}

    /**
     * What a sound CMS tells.
     *
     * @param digest the SHA-256 it was made over in lower-case hexadecimal, to be compared with the file's
     */
    public record Checked(CertificateFacts signer, String digest, Optional<Timestamp> timestamp) {}

    static byte[] sign(byte[] digest, SigningKey key, Optional<TimestampSource> timestamps)
            throws TimestampException, GeneralSecurityException {
        try {
            List<Certificate> certificates = new ArrayList<>();
            List<ESSCertIDv2> pins = new ArrayList<>();
            for (X509Certificate certificate : key.chain()) {
                Certificate encoded = Certificate.getInstance(certificate.getEncoded());
                certificates.add(encoded);
                pins.add(new ESSCertIDv2(
                        Digests.sha256(certificate.getEncoded()),
                        new IssuerSerial(
                                new GeneralNames(new GeneralName(encoded.getIssuer())), encoded.getSerialNumber())));
            }
            DERSet attributes = new DERSet(new ASN1Encodable[] {
                attribute(CMSAttributes.contentType, CMSObjectIdentifiers.data),
                attribute(CMSAttributes.messageDigest, new DEROctetString(digest)),
                attribute(
                        PKCSObjectIdentifiers.id_aa_signingCertificateV2,
                        new SigningCertificateV2(pins.toArray(ESSCertIDv2[]::new)))
            });
            SubjectPublicKeyInfo publicKey = certificates.get(0).getSubjectPublicKeyInfo();
            Signature signer = Signature.getInstance(isElliptic(publicKey) ? "SHA256withECDSA" : "SHA256withRSA");
            signer.initSign(key.privateKey());
            signer.update(attributes.getEncoded(ASN1Encoding.DER));
            byte[] signature = lowest(signer.sign(), publicKey);
            Optional<ASN1Primitive> token = Optional.empty();
            if (timestamps.isPresent()) {
                byte[] given = timestamps.get().stamp(Digests.sha256(signature));
                token = Optional.of(checked(given, signature));
            }
            return new CanonicalCms(
                            CMSObjectIdentifiers.data,
                            Optional.empty(),
                            certificates,
                            NISTObjectIdentifiers.id_sha256,
                            Optional.empty(),
                            attributes,
                            new DEROctetString(signature),
                            token)
                    .encode();
        } catch (IOException | CanonicalCms.Unfit impossible) {
            throw new GeneralSecurityException("the key's certificate cannot be used to sign", impossible);
        }
    }

    private static ASN1Primitive checked(byte[] token, byte[] signature) throws TimestampException {
        try {
            return Timestamp.check(token, signature, new PlatformSignatureCheck())
                    .token();
        } catch (CanonicalCms.Unfit unfit) {
            throw new TimestampException("the timestamp cannot be used: " + unfit.getMessage()
                    + ". Give another timestamp authority, or seal without a timestamp.");
        }
    }

    /** Checks a CMS in itself. Every byte of it must be accounted for. */
    public static Checked check(byte[] encoded, SignatureCheck signatures) throws CanonicalCms.Unfit {
        CanonicalCms cms = CanonicalCms.parse(encoded);
        if (!CMSObjectIdentifiers.data.equals(cms.contentType())
                || cms.content().isPresent()) {
            throw new CanonicalCms.Unfit("it does not sign this file from outside");
        }
        if (!NISTObjectIdentifiers.id_sha256.equals(cms.digest()) || cms.pss().isPresent()) {
            throw new CanonicalCms.Unfit("it uses another algorithm than seals do");
        }
        AttributeTable attributes = new AttributeTable(cms.signedAttributes());
        ASN1Encodable type = single(attributes, CMSAttributes.contentType);
        ASN1Encodable signed = single(attributes, CMSAttributes.messageDigest);
        single(attributes, PKCSObjectIdentifiers.id_aa_signingCertificateV2);
        if (attributes.size() != 3 || !CMSObjectIdentifiers.data.equals(type)) {
            throw new CanonicalCms.Unfit("it has other signed attributes than seals have");
        }
        byte[] value = cms.signature().getOctets();
        SubjectPublicKeyInfo key = cms.certificates().get(0).getSubjectPublicKeyInfo();
        if (!signatures.holds(key, algorithm(key), cms.signedBytes(), value)
                || !Arrays.equals(lowest(value, key), value)) {
            throw new CanonicalCms.Unfit("its signature does not hold");
        }
        CertificateFacts signer;
        try {
            signer = CertificateFacts.of(cms.certificates().get(0), signatures);
        } catch (IllegalArgumentException unreadable) {
            throw new CanonicalCms.Unfit("its certificate cannot be read");
        }
        Optional<Timestamp.Checked> timestamp = Optional.empty();
        Optional<ASN1Primitive> canonicalToken = Optional.empty();
        if (cms.timestamp().isPresent()) {
            try {
                timestamp = Optional.of(
                        Timestamp.check(cms.timestamp().get().getEncoded(ASN1Encoding.DER), value, signatures));
                canonicalToken = Optional.of(timestamp.get().token());
            } catch (CanonicalCms.Unfit unfit) {
                throw new CanonicalCms.Unfit("its timestamp: " + unfit.getMessage());
            } catch (IOException broken) {
                throw new CanonicalCms.Unfit("its timestamp cannot be read");
            }
        }
        CanonicalCms canonical = new CanonicalCms(
                cms.contentType(),
                cms.content(),
                cms.certificates(),
                cms.digest(),
                cms.pss(),
                cms.signedAttributes(),
                cms.signature(),
                canonicalToken);
        if (!Arrays.equals(canonical.encode(), encoded)) {
            throw new CanonicalCms.Unfit("it was touched where its signature does not reach");
        }
        return new Checked(
                signer,
                HexFormat.of().formatHex(ASN1OctetString.getInstance(signed).getOctets()),
                timestamp.map(Timestamp.Checked::timestamp));
    }

    private static Attribute attribute(ASN1ObjectIdentifier type, ASN1Encodable value) {
        return new Attribute(type, new DERSet(value));
    }

    private static ASN1Encodable single(AttributeTable attributes, ASN1ObjectIdentifier type)
            throws CanonicalCms.Unfit {
        Attribute attribute = attributes.get(type);
        if (attribute == null || attribute.getAttrValues().size() != 1) {
            throw new CanonicalCms.Unfit("it lacks a signed attribute that seals have");
        }
        return attribute.getAttrValues().getObjectAt(0);
    }

    /** SHA-256 with the key's own kind of signature; the only ones seals are made with. */
    private static AlgorithmIdentifier algorithm(SubjectPublicKeyInfo key) {
        return isElliptic(key)
                ? new AlgorithmIdentifier(X9ObjectIdentifiers.ecdsa_with_SHA256)
                : new AlgorithmIdentifier(PKCSObjectIdentifiers.sha256WithRSAEncryption, DERNull.INSTANCE);
    }

    private static boolean isElliptic(SubjectPublicKeyInfo key) {
        return X9ObjectIdentifiers.id_ecPublicKey.equals(key.getAlgorithm().getAlgorithm());
    }

    /**
     * An ECDSA signature (r, s) holds as well as (r, n - s), so anybody could turn one into the other: only the one
     * with the lower s counts here. An RSA signature has no twin.
     */
    private static byte[] lowest(byte[] signature, SubjectPublicKeyInfo key) throws CanonicalCms.Unfit {
        if (!isElliptic(key)) {
            return signature;
        }
        try {
            BigInteger order =
                    order(X962Parameters.getInstance(key.getAlgorithm().getParameters()));
            ASN1Sequence numbers = ASN1Sequence.getInstance(signature);
            BigInteger s = ASN1Integer.getInstance(numbers.getObjectAt(1)).getValue();
            return new DERSequence(
                            new ASN1Encodable[] {numbers.getObjectAt(0), new ASN1Integer(s.min(order.subtract(s)))})
                    .getEncoded(ASN1Encoding.DER);
        } catch (IOException | IllegalArgumentException | ClassCastException | IndexOutOfBoundsException unreadable) {
            throw new CanonicalCms.Unfit("its signature value does not fit its certificate");
        }
    }

    private static BigInteger order(X962Parameters curve) throws CanonicalCms.Unfit {
        X9ECParameters parameters = curve.isNamedCurve()
                ? ECNamedCurveTable.getByOID(ASN1ObjectIdentifier.getInstance(curve.getParameters()))
                : X9ECParameters.getInstance(curve.getParameters());
        if (parameters == null) {
            throw new CanonicalCms.Unfit("its certificate names a curve that is not known");
        }
        return parameters.getN();
    }
}
