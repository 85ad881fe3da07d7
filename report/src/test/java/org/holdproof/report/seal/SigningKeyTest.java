package org.holdproof.report.seal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

import java.io.OutputStream;
import java.math.BigInteger;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.security.KeyPair;
import java.security.KeyPairGenerator;
import java.security.KeyStore;
import java.security.cert.Certificate;
import java.security.cert.X509Certificate;
import java.security.spec.ECGenParameterSpec;
import java.time.Instant;
import java.util.Date;
import java.util.List;
import java.util.Locale;
import org.bouncycastle.asn1.x500.X500Name;
import org.bouncycastle.asn1.x509.Extension;
import org.bouncycastle.asn1.x509.KeyUsage;
import org.bouncycastle.cert.jcajce.JcaX509CertificateConverter;
import org.bouncycastle.cert.jcajce.JcaX509v3CertificateBuilder;
import org.bouncycastle.operator.jcajce.JcaContentSignerBuilder;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SigningKeyTest {
    private static final Instant NOW = Instant.parse("2031-03-04T05:06:07Z");
    private static final char[] PASSPHRASE = "four unrelated short words".toCharArray();

    @Test
    void aNewKeyOpensAgainAndIsTheSame(@TempDir Path folder) throws Exception {
        Path file = folder.resolve("seal.p12");
        SigningKey made = NewSigningKey.create(file, PASSPHRASE, "Küche \"Nord\", Haus 2", NOW, 5);
        SigningKey opened = SigningKey.open(file, PASSPHRASE, NOW);
        assertThat(opened.fingerprint()).isEqualTo(made.fingerprint());
        assertThat(opened.signer()).isEqualTo("Küche \"Nord\", Haus 2");
        assertThat(opened.selfSigned()).isTrue();
        assertThat(opened.notBefore()).isEqualTo(NOW);
        assertThat(opened.notAfter()).isEqualTo(Instant.parse("2036-03-04T05:06:07Z"));
        assertThat(opened.certificate().getKeyUsage()).startsWith(true, true, false);
        assertThat(opened.certificate().getBasicConstraints()).isEqualTo(-1);
    }

    @Test
    void onlyTheOwnerMayReadItAndNothingIsLeftBeside(@TempDir Path folder) throws Exception {
        Path file = folder.resolve("seal.p12");
        NewSigningKey.create(file, PASSPHRASE, "Test kitchen", NOW, 5);
        assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(file)))
                .isEqualTo("rw-------");
        try (var files = Files.list(folder)) {
            assertThat(files).containsExactly(file);
        }
    }

    @Test
    void neverOverwrites(@TempDir Path folder) throws Exception {
        Path file = Files.writeString(folder.resolve("seal.p12"), "something dear");
        refused(() -> NewSigningKey.create(file, PASSPHRASE, "Test kitchen", NOW, 5))
                .withMessageContaining("there is such a file already");
        assertThat(file).hasContent("something dear");
    }

    @Test
    void refusesAShortPassphraseAnUnfitNameAnOddValidityAndAMissingFolder(@TempDir Path folder) {
        Path file = folder.resolve("seal.p12");
        refused(() -> NewSigningKey.create(file, "seven77".toCharArray(), "Test kitchen", NOW, 5))
                .withMessageContaining("7 characters");
        refused(() -> NewSigningKey.create(file, PASSPHRASE, " ", NOW, 5)).withMessageContaining("name");
        refused(() -> NewSigningKey.create(file, PASSPHRASE, "x".repeat(65), NOW, 5))
                .withMessageContaining("64 characters");
        refused(() -> NewSigningKey.create(file, PASSPHRASE, "Test kitchen", NOW, 0))
                .withMessageContaining("0 years");
        refused(() -> NewSigningKey.create(file, PASSPHRASE, "Test kitchen", NOW, 21))
                .withMessageContaining("21 years");
        refused(() -> NewSigningKey.create(folder.resolve("none/seal.p12"), PASSPHRASE, "Test kitchen", NOW, 5))
                .withMessageContaining("cannot be written");
        assertThat(folder).isEmptyDirectory();
    }

    @Test
    void opensslReadsItToo(@TempDir Path folder) throws Exception {
        Path file = folder.resolve("seal.p12");
        SigningKey key = NewSigningKey.create(file, PASSPHRASE, "Test kitchen", NOW, 5);
        OutsideTool.Answer info = OutsideTool.OPENSSL.run(
                folder,
                "pkcs12",
                "-in",
                file.toString(),
                "-passin",
                "pass:" + new String(PASSPHRASE),
                "-info",
                "-noout");
        assertThat(info.text()).contains("MAC: sha256, Iteration 10000", "PBES2, PBKDF2, AES-256-CBC, Iteration 10000");
        Path certificate =
                Files.write(folder.resolve("seal.cer"), key.certificate().getEncoded());
        OutsideTool.Answer print = OutsideTool.OPENSSL.run(
                folder, "x509", "-inform", "DER", "-in", certificate.toString(), "-noout", "-fingerprint", "-sha256");
        assertThat(print.text().toLowerCase(Locale.ROOT).replace(":", ""))
                .contains(key.fingerprint().hex());
    }

    @Test
    void saysWhatIsWrongWithAFile(@TempDir Path folder) throws Exception {
        Path file = folder.resolve("seal.p12");
        NewSigningKey.create(file, PASSPHRASE, "Test kitchen", NOW, 5);
        refused(() -> SigningKey.open(file, "another passphrase".toCharArray(), NOW))
                .withMessageContaining("the passphrase is wrong");
        refused(() -> SigningKey.open(file, new char[0], NOW)).withMessageContaining("the passphrase is wrong");
        refused(() -> SigningKey.open(folder.resolve("none.p12"), PASSPHRASE, NOW))
                .withMessageContaining("there is no such file");
        refused(() -> SigningKey.open(folder, PASSPHRASE, NOW)).withMessageContaining("PKCS#12");
        Path text = Files.writeString(folder.resolve("text.p12"), "not a key");
        refused(() -> SigningKey.open(text, PASSPHRASE, NOW)).withMessageContaining("PKCS#12");
        Path empty = Files.createFile(folder.resolve("empty.p12"));
        refused(() -> SigningKey.open(empty, PASSPHRASE, NOW)).withMessageContaining("PKCS#12");
        refused(() -> SigningKey.open(file, PASSPHRASE, NOW.minusSeconds(1))).withMessageContaining("not valid before");
        refused(() -> SigningKey.open(file, PASSPHRASE, Instant.parse("2036-03-04T05:06:08Z")))
                .withMessageContaining("expired on 2036-03-04T05:06:07Z");
    }

    @Test
    void saysWhatIsWrongWithItsKeys(@TempDir Path folder) throws Exception {
        KeyPair ec = pair("EC", 256);
        KeyPair rsa = pair("RSA", 2048);
        refused(() -> SigningKey.open(store(folder, List.of()), PASSPHRASE, NOW))
                .withMessageContaining("no private key");
        refused(() -> SigningKey.open(store(folder, List.of(ec, rsa)), PASSPHRASE, NOW))
                .withMessageContaining("2 private keys");
        refused(() -> SigningKey.open(store(folder, List.of(pair("RSA", 1024))), PASSPHRASE, NOW))
                .withMessageContaining("neither RSA of at least 2048");
        refused(() -> SigningKey.open(store(folder, KeyUsage.keyCertSign, List.of(ec)), PASSPHRASE, NOW))
                .withMessageContaining("not meant for signing");
        assertThat(SigningKey.open(store(folder, List.of(rsa)), PASSPHRASE, NOW).selfSigned())
                .isTrue();
    }

    @Test
    void readsAFingerprintAsPeopleWriteIt() {
        String hex = "0123456789abcdef".repeat(4);
        String written = hex.toUpperCase(Locale.ROOT).replaceAll("(..)(?!$)", "$1:");
        assertThat(Fingerprint.parse(written)).isEqualTo(new Fingerprint(hex));
        assertThatExceptionOfType(IllegalArgumentException.class)
                .isThrownBy(() -> Fingerprint.parse(hex.substring(1)))
                .withMessageContaining("64 hexadecimal figures");
    }

    private static org.assertj.core.api.ThrowableAssertAlternative<UnusableKeyException> refused(
            org.assertj.core.api.ThrowableAssert.ThrowingCallable attempt) {
        return assertThatExceptionOfType(UnusableKeyException.class).isThrownBy(attempt);
    }

    private static KeyPair pair(String algorithm, int bits) throws Exception {
        KeyPairGenerator generator = KeyPairGenerator.getInstance(algorithm);
        if (algorithm.equals("EC")) {
            generator.initialize(new ECGenParameterSpec("secp256r1"));
        } else {
            generator.initialize(bits);
        }
        return generator.generateKeyPair();
    }

    private static Path store(Path folder, List<KeyPair> pairs) throws Exception {
        return store(folder, KeyUsage.digitalSignature, pairs);
    }

    private static Path store(Path folder, int usage, List<KeyPair> pairs) throws Exception {
        KeyStore store = KeyStore.getInstance("PKCS12");
        store.load(null, null);
        for (KeyPair pair : pairs) {
            X509Certificate certificate = certificate(pair, usage);
            store.setKeyEntry("k" + store.size(), pair.getPrivate(), PASSPHRASE, new Certificate[] {certificate});
        }
        Path file = Files.createTempFile(folder, "store", ".p12");
        try (OutputStream out = Files.newOutputStream(file)) {
            store.store(out, PASSPHRASE);
        }
        return file;
    }

    private static X509Certificate certificate(KeyPair pair, int usage) throws Exception {
        X500Name name = new X500Name("CN=Test");
        String algorithm = pair.getPrivate().getAlgorithm().equals("EC") ? "SHA256withECDSA" : "SHA256withRSA";
        return new JcaX509CertificateConverter()
                .getCertificate(new JcaX509v3CertificateBuilder(
                                name,
                                BigInteger.ONE,
                                Date.from(NOW.minusSeconds(10)),
                                Date.from(NOW.plusSeconds(10)),
                                name,
                                pair.getPublic())
                        .addExtension(Extension.keyUsage, true, new KeyUsage(usage))
                        .build(new JcaContentSignerBuilder(algorithm).build(pair.getPrivate())));
    }

    @Test
    void theKeyInTheFileIsEncrypted(@TempDir Path folder) throws Exception {
        Path file = folder.resolve("seal.p12");
        NewSigningKey.create(file, PASSPHRASE, "Test kitchen", NOW, 5);
        KeyStore store = KeyStore.getInstance("PKCS12");
        try (var in = Files.newInputStream(file)) {
            store.load(in, PASSPHRASE);
        }
        byte[] plain = store.getKey("holdproof", PASSPHRASE).getEncoded();
        byte[] secret = java.util.Arrays.copyOfRange(plain, 36, 68);
        assertThat(new String(Files.readAllBytes(file), StandardCharsets.ISO_8859_1))
                .doesNotContain(new String(secret, StandardCharsets.ISO_8859_1));
    }
}
