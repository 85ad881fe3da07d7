package org.holdproof.report.seal;

import java.io.OutputStream;
import java.math.BigInteger;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.KeyPair;
import java.security.KeyPairGenerator;
import java.security.KeyStore;
import java.security.cert.Certificate;
import java.security.cert.X509Certificate;
import java.util.Date;
import org.bouncycastle.asn1.x500.X500Name;
import org.bouncycastle.asn1.x509.BasicConstraints;
import org.bouncycastle.asn1.x509.Extension;
import org.bouncycastle.cert.jcajce.JcaX509CertificateConverter;
import org.bouncycastle.cert.jcajce.JcaX509v3CertificateBuilder;
import org.bouncycastle.operator.jcajce.JcaContentSignerBuilder;

/** An RSA key whose certificate a test root issued, as an office that has its own authority would bring. */
public final class ChainedKey {
    private ChainedKey() {}

    public static SigningKey rsa(Path folder) throws Exception {
        KeyPairGenerator generator = KeyPairGenerator.getInstance("RSA");
        generator.initialize(2048);
        KeyPair rootPair = generator.generateKeyPair();
        KeyPair pair = generator.generateKeyPair();
        X509Certificate root = certificate("CN=Test root", rootPair, "CN=Test root", rootPair);
        X509Certificate leaf = certificate("CN=Test root", rootPair, "O=Test office,C=AT", pair);
        char[] passphrase = "test passphrase".toCharArray();
        KeyStore store = KeyStore.getInstance("PKCS12");
        store.load(null, null);
        store.setKeyEntry("office", pair.getPrivate(), passphrase, new Certificate[] {leaf, root});
        Path file = folder.resolve("office.p12");
        try (OutputStream out = Files.newOutputStream(file)) {
            store.store(out, passphrase);
        }
        return SigningKey.open(file, passphrase, SampleReport.SEALED);
    }

    private static X509Certificate certificate(String issuer, KeyPair issuerPair, String subject, KeyPair pair)
            throws Exception {
        return new JcaX509CertificateConverter()
                .getCertificate(new JcaX509v3CertificateBuilder(
                                new X500Name(issuer),
                                BigInteger.TEN,
                                Date.from(SampleReport.WRITTEN.minusSeconds(60)),
                                Date.from(SampleReport.WRITTEN.plusSeconds(86_400)),
                                new X500Name(subject),
                                pair.getPublic())
                        .addExtension(Extension.basicConstraints, true, new BasicConstraints(issuer.equals(subject)))
                        .build(new JcaContentSignerBuilder("SHA256withRSA").build(issuerPair.getPrivate())));
    }
}
