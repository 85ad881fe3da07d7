package org.holdproof.report.seal;

import java.io.IOException;
import java.math.BigInteger;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Enumeration;
import java.util.List;
import java.util.Optional;
import org.bouncycastle.asn1.ASN1Encodable;
import org.bouncycastle.asn1.ASN1EncodableVector;
import org.bouncycastle.asn1.ASN1Encoding;
import org.bouncycastle.asn1.ASN1Integer;
import org.bouncycastle.asn1.ASN1Object;
import org.bouncycastle.asn1.ASN1ObjectIdentifier;
import org.bouncycastle.asn1.ASN1OctetString;
import org.bouncycastle.asn1.ASN1Primitive;
import org.bouncycastle.asn1.ASN1Sequence;
import org.bouncycastle.asn1.ASN1Set;
import org.bouncycastle.asn1.DERNull;
import org.bouncycastle.asn1.DEROctetString;
import org.bouncycastle.asn1.DERSequence;
import org.bouncycastle.asn1.DERSet;
import org.bouncycastle.asn1.cms.Attribute;
import org.bouncycastle.asn1.cms.AttributeTable;
import org.bouncycastle.asn1.cms.CMSAlgorithmProtection;
import org.bouncycastle.asn1.cms.CMSAttributes;
import org.bouncycastle.asn1.cms.CMSObjectIdentifiers;
import org.bouncycastle.asn1.cms.ContentInfo;
import org.bouncycastle.asn1.cms.IssuerAndSerialNumber;
import org.bouncycastle.asn1.cms.SignedData;
import org.bouncycastle.asn1.cms.SignerIdentifier;
import org.bouncycastle.asn1.cms.SignerInfo;
import org.bouncycastle.asn1.ess.ESSCertID;
import org.bouncycastle.asn1.ess.ESSCertIDv2;
import org.bouncycastle.asn1.ess.SigningCertificate;
import org.bouncycastle.asn1.ess.SigningCertificateV2;
import org.bouncycastle.asn1.nist.NISTObjectIdentifiers;
import org.bouncycastle.asn1.pkcs.PKCSObjectIdentifiers;
import org.bouncycastle.asn1.pkcs.RSASSAPSSparams;
import org.bouncycastle.asn1.x509.AlgorithmIdentifier;
import org.bouncycastle.asn1.x509.Certificate;
import org.bouncycastle.asn1.x9.X9ObjectIdentifiers;

/**
 * CMS SignedData (RFC 5652) with one signer, in the one form this program writes: everything a signature does not cover
 * is derived from what it does cover. The certificates are those the signed attributes pin by their digest; versions,
 * identifiers and algorithms follow from the signer's certificate, or the signed attribute that states them; the encoding is DER. So a message that differs from
 * its own canonical form has been touched where its signature would not tell.
 *
 * @param contentType what is signed
 * @param content the signed content where it lies inside
 * @param certificates the signer's first, then what else the signed attributes pin
 * @param digest the digest algorithm
 * @param pss the parameters where the signature is RSASSA-PSS
 * @param signedAttributes what the signature is over
 * @param timestamp an RFC 3161 token over the signature, as the only unsigned attribute
 */
public record CanonicalCms(
        ASN1ObjectIdentifier contentType,
        Optional<ASN1OctetString> content,
        List<Certificate> certificates,
        ASN1ObjectIdentifier digest,
        Optional<RSASSAPSSparams> pss,
        ASN1Set signedAttributes,
        ASN1OctetString signature,
        Optional<ASN1Primitive> timestamp) {

    public CanonicalCms {
        certificates = List.copyOf(certificates);
    }

    /** A CMS that is not a signature of this kind. */
    public static final class Unfit extends Exception {
        Unfit(String problem) {
            super(problem);
        }
    }

    /** Takes a CMS apart, leaving behind whatever is neither signed nor pinned. */
    public static CanonicalCms parse(byte[] encoded) throws Unfit {
        try {
            ContentInfo info = ContentInfo.getInstance(ASN1Primitive.fromByteArray(encoded));
            if (info == null || !CMSObjectIdentifiers.signedData.equals(info.getContentType())) {
                throw new Unfit("it is not a CMS signature");
            }
            return of(SignedData.getInstance(info.getContent()));
        } catch (IOException | IllegalArgumentException | IllegalStateException | ClassCastException broken) {
            throw new Unfit("it cannot be read as a CMS signature");
        }
    }

    private static CanonicalCms of(SignedData signed) throws Unfit {
        if (signed.getSignerInfos().size() != 1) {
            throw new Unfit("it has " + signed.getSignerInfos().size() + " signers in place of one");
        }
        SignerInfo signer = SignerInfo.getInstance(signed.getSignerInfos().getObjectAt(0));
        ASN1Set attributes = signer.getAuthenticatedAttributes();
        if (attributes == null || signed.getCertificates() == null) {
            throw new Unfit("it lacks signed attributes or certificates");
        }
        ASN1ObjectIdentifier algorithm = signer.getDigestEncryptionAlgorithm().getAlgorithm();
        Optional<RSASSAPSSparams> pss = PKCSObjectIdentifiers.id_RSASSA_PSS.equals(algorithm)
                ? Optional.of(RSASSAPSSparams.getInstance(
                        signer.getDigestEncryptionAlgorithm().getParameters()))
                : Optional.empty();
        return new CanonicalCms(
                signed.getEncapContentInfo().getContentType(),
                Optional.ofNullable(signed.getEncapContentInfo().getContent()).map(ASN1OctetString::getInstance),
                pinned(signed.getCertificates(), attributes),
                signer.getDigestAlgorithm().getAlgorithm(),
                pss,
                attributes,
                signer.getEncryptedDigest(),
                timestampOf(signer));
    }

    private static Optional<ASN1Primitive> timestampOf(SignerInfo signer) {
        if (signer.getUnauthenticatedAttributes() == null) {
            return Optional.empty();
        }
        Attribute token = new AttributeTable(signer.getUnauthenticatedAttributes())
                .get(PKCSObjectIdentifiers.id_aa_signatureTimeStampToken);
        return token == null || token.getAttrValues().size() != 1
                ? Optional.empty()
                : Optional.of(token.getAttrValues().getObjectAt(0).toASN1Primitive());
    }

    /** The certificates of a bag that the signed attributes name by their digest (RFC 5035), in the order named. */
    private static List<Certificate> pinned(ASN1Set bag, ASN1Set attributes) throws Unfit {
        AttributeTable table = new AttributeTable(attributes);
        Attribute second = table.get(PKCSObjectIdentifiers.id_aa_signingCertificateV2);
        Attribute first = table.get(PKCSObjectIdentifiers.id_aa_signingCertificate);
        List<byte[]> digests;
        String algorithm;
        if (second != null) {
            ESSCertIDv2[] ids = SigningCertificateV2.getInstance(second.getAttributeValues()[0])
                    .getCerts();
            algorithm = digestName(ids[0].getHashAlgorithm().getAlgorithm());
            digests = Arrays.stream(ids).map(ESSCertIDv2::getCertHash).toList();
        } else if (first != null) {
            ESSCertID[] ids = SigningCertificate.getInstance(first.getAttributeValues()[0])
                    .getCerts();
            algorithm = "SHA-1";
            digests = Arrays.stream(ids).map(ESSCertID::getCertHash).toList();
        } else {
            throw new Unfit("its signed attributes do not name the signing certificate");
        }
        List<Certificate> found = new ArrayList<>();
        for (byte[] digest : digests) {
            find(bag, algorithm, digest).ifPresent(found::add);
        }
        if (found.isEmpty() || find(bag, algorithm, digests.get(0)).isEmpty()) {
            throw new Unfit("the certificate it carries is not the one its signed attributes name");
        }
        return found;
    }

    private static Optional<Certificate> find(ASN1Set bag, String algorithm, byte[] digest) throws Unfit {
        Enumeration<?> certificates = bag.getObjects();
        while (certificates.hasMoreElements()) {
            ASN1Primitive candidate = ((ASN1Encodable) certificates.nextElement()).toASN1Primitive();
            try {
                byte[] encoded = candidate.getEncoded(ASN1Encoding.DER);
                if (Arrays.equals(MessageDigest.getInstance(algorithm).digest(encoded), digest)) {
                    return Optional.of(Certificate.getInstance(candidate));
                }
            } catch (IOException | NoSuchAlgorithmException unusable) {
                throw new Unfit("its certificates cannot be compared");
            }
        }
        return Optional.empty();
    }

    /** The JDK's name of a digest of the SHA-2 family. */
    static String digestName(ASN1ObjectIdentifier digest) throws Unfit {
        if (NISTObjectIdentifiers.id_sha256.equals(digest)) {
            return "SHA-256";
        }
        if (NISTObjectIdentifiers.id_sha384.equals(digest)) {
            return "SHA-384";
        }
        if (NISTObjectIdentifiers.id_sha512.equals(digest)) {
            return "SHA-512";
        }
        throw new Unfit("it rests on a digest other than SHA-256, SHA-384 and SHA-512");
    }

    /** What the signature is over: the signed attributes as a DER SET. */
    byte[] signedBytes() {
        return der(signedAttributes);
    }

    /** The canonical encoding. */
    public byte[] encode() throws Unfit {
        Certificate signer = certificates.get(0);
        ASN1Set unsigned = timestamp
                .map(token -> (ASN1Set) new DERSet(
                        new Attribute(PKCSObjectIdentifiers.id_aa_signatureTimeStampToken, new DERSet(token))))
                .orElse(null);
        SignerInfo info = new SignerInfo(
                new SignerIdentifier(new IssuerAndSerialNumber(signer)),
                digestAlgorithm(),
                signedAttributes,
                signatureAlgorithm(signer),
                new DEROctetString(canonicalSignature(signer)),
                unsigned);
        ASN1EncodableVector bag = new ASN1EncodableVector();
        certificates.forEach(bag::add);
        SignedData signed = new SignedData(
                new DERSet(digestAlgorithm()),
                new ContentInfo(contentType, content.orElse(null)),
                new DERSet(bag),
                null,
                new DERSet(info));
        return der(new ContentInfo(CMSObjectIdentifiers.signedData, signed));
    }

    /** The algorithms as a signed attribute states them (RFC 6211), where there is one. */
    private Optional<CMSAlgorithmProtection> protectedAlgorithms() {
        return Optional.ofNullable(new AttributeTable(signedAttributes).get(CMSAttributes.cmsAlgorithmProtect))
                .map(attribute -> CMSAlgorithmProtection.getInstance(attribute.getAttributeValues()[0]));
    }

    private AlgorithmIdentifier digestAlgorithm() {
        return protectedAlgorithms()
                .map(CMSAlgorithmProtection::getDigestAlgorithm)
                .orElse(new AlgorithmIdentifier(digest));
    }

    private AlgorithmIdentifier signatureAlgorithm(Certificate signer) throws Unfit {
        Optional<CMSAlgorithmProtection> stated = protectedAlgorithms();
        if (stated.isPresent() && stated.get().getSignatureAlgorithm() != null) {
            return stated.get().getSignatureAlgorithm();
        }
        ASN1ObjectIdentifier key =
                signer.getSubjectPublicKeyInfo().getAlgorithm().getAlgorithm();
        if (pss.isPresent()) {
            AlgorithmIdentifier hash =
                    new AlgorithmIdentifier(pss.get().getHashAlgorithm().getAlgorithm(), DERNull.INSTANCE);
            return new AlgorithmIdentifier(
                    PKCSObjectIdentifiers.id_RSASSA_PSS,
                    new RSASSAPSSparams(
                            hash,
                            new AlgorithmIdentifier(PKCSObjectIdentifiers.id_mgf1, hash),
                            new ASN1Integer(pss.get().getSaltLength()),
                            RSASSAPSSparams.DEFAULT_TRAILER_FIELD));
        }
        if (PKCSObjectIdentifiers.rsaEncryption.equals(key)) {
            return new AlgorithmIdentifier(PKCSObjectIdentifiers.rsaEncryption, DERNull.INSTANCE);
        }
        if (X9ObjectIdentifiers.id_ecPublicKey.equals(key)) {
            return new AlgorithmIdentifier(
                    switch (digestName(digest)) {
                        case "SHA-256" -> X9ObjectIdentifiers.ecdsa_with_SHA256;
                        case "SHA-384" -> X9ObjectIdentifiers.ecdsa_with_SHA384;
                        default -> X9ObjectIdentifiers.ecdsa_with_SHA512;
                    });
        }
        throw new Unfit("it is signed with a key that is neither RSA nor elliptic-curve");
    }

    /** An ECDSA signature re-encoded from its two numbers; an RSA signature has only one form. */
    private byte[] canonicalSignature(Certificate signer) throws Unfit {
        if (!X9ObjectIdentifiers.id_ecPublicKey.equals(
                signer.getSubjectPublicKeyInfo().getAlgorithm().getAlgorithm())) {
            return signature.getOctets();
        }
        try {
            ASN1Sequence numbers = ASN1Sequence.getInstance(ASN1Primitive.fromByteArray(signature.getOctets()));
            BigInteger r = ASN1Integer.getInstance(numbers.getObjectAt(0)).getValue();
            BigInteger s = ASN1Integer.getInstance(numbers.getObjectAt(1)).getValue();
            return der(new DERSequence(new ASN1Encodable[] {new ASN1Integer(r), new ASN1Integer(s)}));
        } catch (IOException | IllegalArgumentException | IndexOutOfBoundsException broken) {
            throw new Unfit("its signature value cannot be read");
        }
    }

    private static byte[] der(ASN1Object object) {
        try {
            return object.getEncoded(ASN1Encoding.DER);
        } catch (IOException impossible) {
            throw new IllegalStateException("an object in memory cannot be encoded", impossible);
        }
    }
}
