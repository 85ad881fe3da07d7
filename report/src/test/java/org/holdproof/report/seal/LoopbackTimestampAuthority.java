package org.holdproof.report.seal;

import com.sun.net.httpserver.HttpExchange;
import com.sun.net.httpserver.HttpServer;
import java.io.IOException;
import java.math.BigInteger;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.URI;
import java.security.KeyPair;
import java.security.KeyPairGenerator;
import java.security.PrivateKey;
import java.security.cert.X509Certificate;
import java.security.spec.ECGenParameterSpec;
import java.time.Instant;
import java.util.Date;
import java.util.List;
import org.bouncycastle.asn1.ASN1ObjectIdentifier;
import org.bouncycastle.asn1.x500.X500Name;
import org.bouncycastle.asn1.x509.BasicConstraints;
import org.bouncycastle.asn1.x509.ExtendedKeyUsage;
import org.bouncycastle.asn1.x509.Extension;
import org.bouncycastle.asn1.x509.KeyPurposeId;
import org.bouncycastle.asn1.x509.KeyUsage;
import org.bouncycastle.cert.jcajce.JcaCertStore;
import org.bouncycastle.cert.jcajce.JcaX509CertificateConverter;
import org.bouncycastle.cert.jcajce.JcaX509v3CertificateBuilder;
import org.bouncycastle.cms.jcajce.JcaSignerInfoGeneratorBuilder;
import org.bouncycastle.operator.DigestCalculatorProvider;
import org.bouncycastle.operator.jcajce.JcaContentSignerBuilder;
import org.bouncycastle.operator.jcajce.JcaDigestCalculatorProviderBuilder;
import org.bouncycastle.tsp.TSPAlgorithms;
import org.bouncycastle.tsp.TimeStampRequest;
import org.bouncycastle.tsp.TimeStampResponse;
import org.bouncycastle.tsp.TimeStampResponseGenerator;
import org.bouncycastle.tsp.TimeStampTokenGenerator;

/** A timestamp authority made of Bouncy Castle's own parts (RFC 3161), on the loopback address, with its own root. */
public final class LoopbackTimestampAuthority implements AutoCloseable {
    /** How it behaves. */
    public enum Manner {
        HONEST,
        ANOTHER_NONCE,
        ANOTHER_IMPRINT,
        REFUSES,
        SERVER_ERROR,
        NONSENSE,
        SILENT
    }

    final X509Certificate root;
    final X509Certificate certificate;
    private final PrivateKey key;
    private final String algorithm;
    private final Manner manner;
    private final Instant time;
    private final HttpServer server;

    public LoopbackTimestampAuthority(Manner manner, Instant time, String algorithm) throws Exception {
        this.manner = manner;
        this.time = time;
        this.algorithm = algorithm;
        boolean rsa = algorithm.contains("RSA");
        KeyPairGenerator generator = KeyPairGenerator.getInstance(rsa ? "RSA" : "EC");
        if (rsa) {
            generator.initialize(2048);
        } else {
            generator.initialize(new ECGenParameterSpec("secp256r1"));
        }
        KeyPair rootPair = generator.generateKeyPair();
        KeyPair pair = generator.generateKeyPair();
        this.key = pair.getPrivate();
        String signing = rsa ? "SHA256withRSA" : "SHA256withECDSA";
        X500Name rootName = new X500Name("CN=Test root");
        X500Name name = new X500Name("CN=Test timestamp authority");
        this.root = certificate(rootName, rootPair, rootName, rootPair, signing, true);
        this.certificate = certificate(rootName, rootPair, name, pair, signing, false);
        this.server = HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0);
        server.createContext("/", this::handle);
        server.start();
    }

    private X509Certificate certificate(
            X500Name issuer, KeyPair issuerPair, X500Name subject, KeyPair pair, String signing, boolean authority)
            throws Exception {
        JcaX509v3CertificateBuilder builder = new JcaX509v3CertificateBuilder(
                issuer,
                BigInteger.valueOf(authority ? 1 : 2),
                Date.from(time.minusSeconds(86_400)),
                Date.from(time.plusSeconds(86_400 * 365L)),
                subject,
                pair.getPublic());
        builder.addExtension(Extension.basicConstraints, true, new BasicConstraints(authority));
        builder.addExtension(
                Extension.keyUsage,
                true,
                new KeyUsage(authority ? KeyUsage.keyCertSign | KeyUsage.cRLSign : KeyUsage.digitalSignature));
        if (!authority) {
            builder.addExtension(
                    Extension.extendedKeyUsage, true, new ExtendedKeyUsage(KeyPurposeId.id_kp_timeStamping));
        }
        return new JcaX509CertificateConverter()
                .getCertificate(builder.build(new JcaContentSignerBuilder(signing).build(issuerPair.getPrivate())));
    }

    public URI address() {
        return URI.create("http://127.0.0.1:" + server.getAddress().getPort() + "/tsa");
    }

    private void handle(HttpExchange exchange) throws IOException {
        try (exchange) {
            TimeStampRequest request =
                    new TimeStampRequest(exchange.getRequestBody().readAllBytes());
            byte[] answer;
            switch (manner) {
                case SERVER_ERROR -> {
                    exchange.sendResponseHeaders(503, -1);
                    return;
                }
                case SILENT -> {
                    Thread.sleep(5_000);
                    return;
                }
                case NONSENSE -> answer = new byte[] {1, 2, 3};
                default -> answer = answer(request).getEncoded();
            }
            exchange.getResponseHeaders().set("Content-Type", "application/timestamp-reply");
            exchange.sendResponseHeaders(200, answer.length);
            exchange.getResponseBody().write(answer);
        } catch (Exception broken) {
            throw new IOException(broken);
        }
    }

    private TimeStampResponse answer(TimeStampRequest asked) throws Exception {
        DigestCalculatorProvider digests = new JcaDigestCalculatorProviderBuilder().build();
        TimeStampTokenGenerator tokens = new TimeStampTokenGenerator(
                new JcaSignerInfoGeneratorBuilder(digests)
                        .build(new JcaContentSignerBuilder(algorithm).build(key), certificate),
                digests.get(new org.bouncycastle.asn1.x509.AlgorithmIdentifier(
                        org.bouncycastle.asn1.nist.NISTObjectIdentifiers.id_sha256)),
                new ASN1ObjectIdentifier("1.3.6.1.4.1.13762.3"));
        tokens.addCertificates(new JcaCertStore(List.of(certificate, root)));
        TimeStampResponseGenerator responses = new TimeStampResponseGenerator(tokens, TSPAlgorithms.ALLOWED);
        if (manner == Manner.REFUSES) {
            return responses.generateFailResponse(2, 2, "not today");
        }
        byte[] imprint = asked.getMessageImprintDigest();
        BigInteger nonce = asked.getNonce();
        if (manner == Manner.ANOTHER_IMPRINT) {
            imprint[0] ^= 1;
        }
        if (manner == Manner.ANOTHER_NONCE) {
            nonce = nonce.add(BigInteger.ONE);
        }
        var generator = new org.bouncycastle.tsp.TimeStampRequestGenerator();
        generator.setCertReq(true);
        return responses.generate(
                generator.generate(asked.getMessageImprintAlgOID(), imprint, nonce), BigInteger.TEN, Date.from(time));
    }

    @Override
    public void close() {
        server.stop(0);
    }
}
