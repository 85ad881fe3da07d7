package org.holdproof.report.seal;

import java.io.IOException;
import java.io.OutputStream;
import java.math.BigInteger;
import java.nio.channels.Channels;
import java.nio.channels.FileChannel;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.PosixFilePermissions;
import java.security.GeneralSecurityException;
import java.security.KeyPair;
import java.security.KeyPairGenerator;
import java.security.SecureRandom;
import java.security.spec.ECGenParameterSpec;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.Date;
import java.util.Set;
import javax.crypto.Cipher;
import javax.crypto.CipherOutputStream;
import javax.crypto.SecretKeyFactory;
import javax.crypto.spec.IvParameterSpec;
import javax.crypto.spec.PBEKeySpec;
import javax.crypto.spec.SecretKeySpec;
import org.bouncycastle.asn1.ASN1OctetString;
import org.bouncycastle.asn1.DERBMPString;
import org.bouncycastle.asn1.DERNull;
import org.bouncycastle.asn1.DEROctetString;
import org.bouncycastle.asn1.nist.NISTObjectIdentifiers;
import org.bouncycastle.asn1.pkcs.EncryptionScheme;
import org.bouncycastle.asn1.pkcs.KeyDerivationFunc;
import org.bouncycastle.asn1.pkcs.PBES2Parameters;
import org.bouncycastle.asn1.pkcs.PBKDF2Params;
import org.bouncycastle.asn1.pkcs.PKCSObjectIdentifiers;
import org.bouncycastle.asn1.pkcs.PrivateKeyInfo;
import org.bouncycastle.asn1.x500.X500Name;
import org.bouncycastle.asn1.x500.X500NameBuilder;
import org.bouncycastle.asn1.x500.style.BCStyle;
import org.bouncycastle.asn1.x509.AlgorithmIdentifier;
import org.bouncycastle.asn1.x509.BasicConstraints;
import org.bouncycastle.asn1.x509.Extension;
import org.bouncycastle.asn1.x509.KeyUsage;
import org.bouncycastle.asn1.x509.SubjectPublicKeyInfo;
import org.bouncycastle.cert.X509CertificateHolder;
import org.bouncycastle.cert.X509v3CertificateBuilder;
import org.bouncycastle.cert.bc.BcX509ExtensionUtils;
import org.bouncycastle.crypto.digests.SHA256Digest;
import org.bouncycastle.operator.GenericKey;
import org.bouncycastle.operator.OperatorCreationException;
import org.bouncycastle.operator.OutputEncryptor;
import org.bouncycastle.operator.jcajce.JcaContentSignerBuilder;
import org.bouncycastle.pkcs.PKCS12PfxPduBuilder;
import org.bouncycastle.pkcs.PKCS12SafeBag;
import org.bouncycastle.pkcs.PKCS12SafeBagBuilder;
import org.bouncycastle.pkcs.PKCSException;
import org.bouncycastle.pkcs.bc.BcPKCS12MacCalculatorBuilder;

/**
 * Makes a kitchen its own key: elliptic-curve P-256 with a self-signed certificate. P-256 because every PDF reader
 * checks it, the key is made at once, and signing costs a tenth of RSA-3072's time at the same strength (NIST SP
 * 800-57 Part 1, table 2: both 128 bits).
 */
public final class NewSigningKey {
    /** Fewest characters of a passphrase. */
    public static final int SHORTEST_PASSPHRASE = 8;

    /** Longest validity in years. */
    public static final int MOST_YEARS = 20;

    /**
     * Rounds of key derivation, for the key's encryption and for the file's integrity code alike, as either tests a
     * guessed passphrase. It is what Java's own PKCS#12 files use; more is felt at every `verify`.
     */
    static final int ITERATIONS = 10_000;

    private static final int SALT_BYTES = 20;
    private static final int LONGEST_NAME = 64;

    private NewSigningKey() {}

    /**
     * Writes a new PKCS#12 file that only its owner may read (mode 0600), beside its place and then moved there.
     *
     * @param passphrase at least {@link #SHORTEST_PASSPHRASE} characters; left as it is, the caller wipes it
     * @param kitchen the name to stand in the certificate, 64 characters at most (RFC 5280, upper bound of a common
     *     name)
     * @param now the validity's begin
     * @param years the validity's length, 1 to {@link #MOST_YEARS}
     * @return the key, as if opened from the file
     * @throws UnusableKeyException if the file exists, its folder cannot be written, or a value does not fit
     */
    public static SigningKey create(Path file, char[] passphrase, String kitchen, Instant now, int years)
            throws UnusableKeyException {
        if (passphrase.length < SHORTEST_PASSPHRASE) {
            throw new UnusableKeyException(
                    file,
                    "the passphrase has " + passphrase.length + " characters",
                    "Take at least " + SHORTEST_PASSPHRASE + "; a few unrelated words do well.");
        }
        if (kitchen.isBlank()
                || kitchen.length() > LONGEST_NAME
                || kitchen.chars().anyMatch(Character::isISOControl)) {
            throw new UnusableKeyException(
                    file,
                    "the kitchen's name \"" + kitchen + "\" cannot stand in a certificate",
                    "Give 1 to " + LONGEST_NAME + " characters.");
        }
        if (years < 1 || years > MOST_YEARS) {
            throw new UnusableKeyException(
                    file, "a validity of " + years + " years", "Give 1 to " + MOST_YEARS + " years.");
        }
        if (Files.exists(file)) {
            throw exists(file);
        }
        byte[] content;
        try {
            KeyPairGenerator generator = KeyPairGenerator.getInstance("EC");
            generator.initialize(new ECGenParameterSpec("secp256r1"));
            KeyPair pair = generator.generateKeyPair();
            content = pkcs12(pair, certificate(pair, kitchen.strip(), now, years), passphrase);
        } catch (GeneralSecurityException | OperatorCreationException | PKCSException | IOException impossible) {
            throw new IllegalStateException("this Java cannot make a P-256 key", impossible);
        }
        writePrivately(file, content);
        return SigningKey.open(file, passphrase, now);
    }

    private static X509CertificateHolder certificate(KeyPair pair, String kitchen, Instant now, int years)
            throws OperatorCreationException, IOException {
        X500Name name = new X500NameBuilder(BCStyle.INSTANCE)
                .addRDN(BCStyle.CN, kitchen)
                .build();
        SubjectPublicKeyInfo publicKey =
                SubjectPublicKeyInfo.getInstance(pair.getPublic().getEncoded());
        Instant begin = now.truncatedTo(ChronoUnit.SECONDS);
        X509v3CertificateBuilder builder = new X509v3CertificateBuilder(
                name,
                new BigInteger(127, new SecureRandom()).setBit(126),
                Date.from(begin),
                Date.from(begin.atZone(ZoneOffset.UTC).plusYears(years).toInstant()),
                name,
                publicKey);
        builder.addExtension(Extension.basicConstraints, true, new BasicConstraints(false));
        builder.addExtension(
                Extension.keyUsage, true, new KeyUsage(KeyUsage.digitalSignature | KeyUsage.nonRepudiation));
        builder.addExtension(
                Extension.subjectKeyIdentifier,
                false,
                new BcX509ExtensionUtils().createSubjectKeyIdentifier(publicKey));
        return builder.build(new JcaContentSignerBuilder("SHA256withECDSA").build(pair.getPrivate()));
    }

    private static byte[] pkcs12(KeyPair pair, X509CertificateHolder certificate, char[] passphrase)
            throws GeneralSecurityException, PKCSException, IOException {
        DERBMPString label = new DERBMPString("holdproof");
        ASN1OctetString keyId = new DEROctetString(Digests.sha256(certificate.getEncoded()));
        PKCS12SafeBag key = new PKCS12SafeBagBuilder(
                        PrivateKeyInfo.getInstance(pair.getPrivate().getEncoded()), new PassphraseEncryptor(passphrase))
                .addBagAttribute(PKCSObjectIdentifiers.pkcs_9_at_friendlyName, label)
                .addBagAttribute(PKCSObjectIdentifiers.pkcs_9_at_localKeyId, keyId)
                .build();
        PKCS12SafeBag owner = new PKCS12SafeBagBuilder(certificate)
                .addBagAttribute(PKCSObjectIdentifiers.pkcs_9_at_friendlyName, label)
                .addBagAttribute(PKCSObjectIdentifiers.pkcs_9_at_localKeyId, keyId)
                .build();
        // The certificate is public: left unencrypted, opening the file costs one derivation less.
        return new PKCS12PfxPduBuilder()
                .addData(key)
                .addData(owner)
                .build(
                        new BcPKCS12MacCalculatorBuilder(
                                        new SHA256Digest(),
                                        new AlgorithmIdentifier(NISTObjectIdentifiers.id_sha256, DERNull.INSTANCE))
                                .setIterationCount(ITERATIONS),
                        passphrase)
                .getEncoded();
    }

    /** PBES2 (RFC 8018) with PBKDF2, HMAC-SHA-256 and AES-256-CBC, from the JDK's own ciphers. */
    private static final class PassphraseEncryptor implements OutputEncryptor {
        private final AlgorithmIdentifier algorithm;
        private final Cipher cipher;
        private final SecretKeySpec key;

        PassphraseEncryptor(char[] passphrase) throws GeneralSecurityException {
            SecureRandom random = new SecureRandom();
            byte[] salt = new byte[SALT_BYTES];
            random.nextBytes(salt);
            byte[] start = new byte[16];
            random.nextBytes(start);
            PBEKeySpec spec = new PBEKeySpec(passphrase, salt, ITERATIONS, 256);
            this.key = new SecretKeySpec(
                    SecretKeyFactory.getInstance("PBKDF2WithHmacSHA256")
                            .generateSecret(spec)
                            .getEncoded(),
                    "AES");
            spec.clearPassword();
            this.cipher = Cipher.getInstance("AES/CBC/PKCS5Padding");
            cipher.init(Cipher.ENCRYPT_MODE, key, new IvParameterSpec(start));
            this.algorithm = new AlgorithmIdentifier(
                    PKCSObjectIdentifiers.id_PBES2,
                    new PBES2Parameters(
                            new KeyDerivationFunc(
                                    PKCSObjectIdentifiers.id_PBKDF2,
                                    new PBKDF2Params(
                                            salt,
                                            ITERATIONS,
                                            32,
                                            new AlgorithmIdentifier(
                                                    PKCSObjectIdentifiers.id_hmacWithSHA256, DERNull.INSTANCE))),
                            new EncryptionScheme(NISTObjectIdentifiers.id_aes256_CBC, new DEROctetString(start))));
        }

        @Override
        public AlgorithmIdentifier getAlgorithmIdentifier() {
            return algorithm;
        }

        @Override
        public OutputStream getOutputStream(OutputStream encrypted) {
            return new CipherOutputStream(encrypted, cipher);
        }

        @Override
        public GenericKey getKey() {
            return new GenericKey(algorithm, key.getEncoded());
        }
    }

    private static void writePrivately(Path file, byte[] content) throws UnusableKeyException {
        Path target = file.toAbsolutePath();
        Path beside = target.resolveSibling(
                "." + target.getFileName() + "." + ProcessHandle.current().pid() + ".part");
        try {
            try (FileChannel channel = FileChannel.open(
                    beside,
                    Set.of(StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE),
                    PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("rw-------")))) {
                Channels.newOutputStream(channel).write(content);
                channel.force(true);
            }
            try {
                // A second name for the same file never replaces another, which a move may.
                Files.createLink(target, beside);
            } catch (UnsupportedOperationException noLinks) {
                Files.move(beside, target);
            }
        } catch (FileAlreadyExistsException taken) {
            throw exists(file);
        } catch (UnsupportedOperationException noModes) {
            throw new UnusableKeyException(
                    file,
                    "this file system cannot keep a file private to its owner",
                    "Keep the key on a disk that knows file modes, such as the home folder.");
        } catch (IOException unwritable) {
            throw new UnusableKeyException(
                    file,
                    "it cannot be written (" + unwritable.getMessage() + ")",
                    "Give a folder that exists and that you may write.");
        } finally {
            try {
                Files.deleteIfExists(beside);
            } catch (IOException left) {
                beside.toFile().deleteOnExit();
            }
        }
    }

    private static UnusableKeyException exists(Path file) {
        return new UnusableKeyException(
                file, "there is such a file already", "Give another name: a key is never overwritten.");
    }
}
