package org.holdproof.report.seal;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.security.GeneralSecurityException;
import java.security.Key;
import java.security.KeyStore;
import java.security.KeyStoreException;
import java.security.PrivateKey;
import java.security.UnrecoverableKeyException;
import java.security.cert.Certificate;
import java.security.cert.X509Certificate;
import java.security.interfaces.ECPublicKey;
import java.security.interfaces.RSAPublicKey;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;

/** A private key and its certificates, to seal reports with. */
public final class SigningKey {
    private static final int LEAST_RSA_BITS = 2048;
    private static final int LEAST_EC_BITS = 256;
    private static final int LARGEST_FILE = 1 << 20;

    private final PrivateKey privateKey;
    private final List<X509Certificate> chain;
    private final CertificateFacts facts;

    private SigningKey(PrivateKey privateKey, List<X509Certificate> chain) {
        this.privateKey = privateKey;
        this.chain = List.copyOf(chain);
        this.facts = CertificateFacts.of(chain.get(0), new PlatformSignatureCheck());
    }

    /**
     * Opens a PKCS#12 file (RFC 7292) that holds one private key: RSA of at least 2048 bits, or elliptic-curve of at
     * least 256.
     *
     * @param passphrase left as it is; the caller wipes it
     * @param now must lie within the certificate's validity
     * @throws UnusableKeyException if the file is missing or no PKCS#12, the passphrase wrong, there is no private key
     *     or more than one, or the certificate does not allow signing now
     */
    public static SigningKey open(Path file, char[] passphrase, Instant now) throws UnusableKeyException {
        KeyStore store = load(file, passphrase);
        try {
            List<String> aliases = new ArrayList<>();
            for (String alias : Collections.list(store.aliases())) {
                if (store.isKeyEntry(alias)) {
                    aliases.add(alias);
                }
            }
            if (aliases.isEmpty()) {
                throw new UnusableKeyException(
                        file,
                        "it holds no private key",
                        "Export the certificate together with its private key, or make a key with `holdproof key new`.");
            }
            if (aliases.size() > 1) {
                throw new UnusableKeyException(
                        file,
                        "it holds " + aliases.size() + " private keys",
                        "Give a file that holds only the key to seal with.");
            }
            String alias = aliases.get(0);
            Key key = store.getKey(alias, passphrase);
            List<X509Certificate> chain = new ArrayList<>();
            Certificate[] certificates = store.getCertificateChain(alias);
            if (certificates != null) {
                for (Certificate certificate : certificates) {
                    if (certificate instanceof X509Certificate x509) {
                        chain.add(x509);
                    }
                }
            }
            if (!(key instanceof PrivateKey privateKey) || chain.isEmpty()) {
                throw new UnusableKeyException(
                        file, "its private key has no certificate", "Export the key together with its certificate.");
            }
            checkKind(file, chain.get(0));
            checkUse(file, chain.get(0), now);
            return new SigningKey(privateKey, chain);
        } catch (UnrecoverableKeyException locked) {
            throw new UnusableKeyException(
                    file,
                    "its private key does not open with this passphrase",
                    "Give the key the same passphrase as the file.");
        } catch (GeneralSecurityException unreadable) {
            throw new UnusableKeyException(
                    file, "its key cannot be read (" + unreadable.getMessage() + ")", "Export it again.");
        }
    }

    private static KeyStore load(Path file, char[] passphrase) throws UnusableKeyException {
        try {
            if (Files.size(file) > LARGEST_FILE) {
                throw new UnusableKeyException(
                        file, "it is larger than any key file", "Give a PKCS#12 file (.p12 or .pfx).");
            }
            KeyStore store = KeyStore.getInstance("PKCS12");
            store.load(new ByteArrayInputStream(Files.readAllBytes(file)), passphrase);
            return store;
        } catch (NoSuchFileException missing) {
            throw new UnusableKeyException(
                    file, "there is no such file", "Make a key with `holdproof key new`, or give the right path.");
        } catch (IOException unreadable) {
            if (unreadable.getCause() instanceof UnrecoverableKeyException) {
                throw new UnusableKeyException(
                        file,
                        "the passphrase is wrong",
                        "Try again. A lost passphrase cannot be recovered: make a new key.");
            }
            throw new UnusableKeyException(
                    file,
                    "it cannot be read as a PKCS#12 key file",
                    "Give a PKCS#12 file (.p12 or .pfx) that you may read.");
        } catch (KeyStoreException absent) {
            throw new IllegalStateException("every Java runtime reads PKCS#12", absent);
        } catch (GeneralSecurityException unreadable) {
            throw new UnusableKeyException(
                    file,
                    "it is protected in a way this Java does not read (" + unreadable.getMessage() + ")",
                    "Export it again with AES encryption.");
        }
    }

    private static void checkKind(Path file, X509Certificate certificate) throws UnusableKeyException {
        boolean strong = false;
        if (certificate.getPublicKey() instanceof RSAPublicKey rsa) {
            strong = rsa.getModulus().bitLength() >= LEAST_RSA_BITS;
        } else if (certificate.getPublicKey() instanceof ECPublicKey ec) {
            strong = ec.getParams().getOrder().bitLength() >= LEAST_EC_BITS;
        }
        if (!strong) {
            throw new UnusableKeyException(
                    file,
                    "its key is neither RSA of at least " + LEAST_RSA_BITS + " bits nor elliptic-curve of at least "
                            + LEAST_EC_BITS,
                    "Make a key with `holdproof key new`.");
        }
    }

    private static void checkUse(Path file, X509Certificate certificate, Instant now) throws UnusableKeyException {
        if (now.isBefore(certificate.getNotBefore().toInstant())) {
            throw new UnusableKeyException(
                    file,
                    "its certificate is not valid before "
                            + certificate.getNotBefore().toInstant(),
                    "Set this machine's clock, or wait.");
        }
        if (now.isAfter(certificate.getNotAfter().toInstant())) {
            throw new UnusableKeyException(
                    file,
                    "its certificate expired on " + certificate.getNotAfter().toInstant(),
                    "Make a new key with `holdproof key new`; reports sealed with the old one stay checkable.");
        }
        boolean[] usage = certificate.getKeyUsage();
        if (usage != null && !usage[0] && !usage[1]) {
            throw new UnusableKeyException(
                    file, "its certificate is not meant for signing", "Use a certificate for digital signatures.");
        }
    }

    PrivateKey privateKey() {
        return privateKey;
    }

    /** The signer's certificate first. */
    List<X509Certificate> chain() {
        return chain;
    }

    public X509Certificate certificate() {
        return chain.get(0);
    }

    /** Whom the certificate names, the most general part last. */
    public String subject() {
        return facts.subject();
    }

    /** Who it is, for print: the certificate's common name, or its whole subject where it has none. */
    public String signer() {
        return facts.name();
    }

    public Fingerprint fingerprint() {
        return facts.fingerprint();
    }

    public boolean selfSigned() {
        return facts.selfSigned();
    }

    public Instant notBefore() {
        return facts.notBefore();
    }

    public Instant notAfter() {
        return facts.notAfter();
    }
}
