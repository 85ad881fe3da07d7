package org.holdproof.report.seal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.net.ServerSocket;
import java.net.URI;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import org.holdproof.report.recheck.Recheck;
import org.holdproof.report.recheck.RecheckReport;
import org.holdproof.report.seal.LoopbackTimestampAuthority.Manner;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** RFC 3161 against an authority made of Bouncy Castle's parts. */
class TimestampServiceTest {
    private static final Instant STAMPED = SampleReport.SEALED.plusSeconds(2);
    private static final SigningKey KEY = SampleReport.newKey(SampleReport.KITCHEN);

    @ParameterizedTest
    @ValueSource(
            strings = {"SHA256withRSA", "SHA512withRSA", "SHA256withECDSA", "SHA384withECDSA", "SHA256withRSAandMGF1"})
    void aStampedSealTellsTheAuthorityAndItsTime(String algorithm) throws Exception {
        try (LoopbackTimestampAuthority authority = new LoopbackTimestampAuthority(Manner.HONEST, STAMPED, algorithm)) {
            RecheckReport report = Recheck.of(SampleReport.sealed(KEY, service(authority)));
            assertThat(report.findings()).isEmpty();
            assertThat(report.timestamp())
                    .contains(new Timestamp(
                            STAMPED, "Test timestamp authority", Fingerprint.of(authority.certificate.getEncoded())));
        }
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "ANOTHER_NONCE | does not fit the request",
                "ANOTHER_IMPRINT | does not fit the request",
                "REFUSES | not today",
                "SERVER_ERROR | HTTP status 503",
                "NONSENSE | no timestamp from",
                "SILENT | did not answer within 1 s"
            })
    void saysWhyThereIsNoTimestamp(Manner manner, String reason) throws Exception {
        try (LoopbackTimestampAuthority authority = new LoopbackTimestampAuthority(manner, STAMPED, "SHA256withRSA")) {
            // Only one that never answers is worth a short patience: a busy machine answers late.
            Duration patience = Duration.ofSeconds(manner == Manner.SILENT ? 1 : 60);
            TimestampService service = new TimestampService(authority.address(), patience);
            assertThatExceptionOfType(TimestampException.class)
                    .isThrownBy(() -> service.stamp(new byte[32]))
                    .withMessageContaining(reason)
                    .withMessageContaining(authority.address().toString())
                    .withMessageContaining("seal without a timestamp");
        }
    }

    @Test
    void saysThatNobodyIsThere() throws Exception {
        int port;
        try (ServerSocket socket = new ServerSocket(0)) {
            port = socket.getLocalPort();
        }
        TimestampService service = new TimestampService(URI.create("http://127.0.0.1:" + port), Duration.ofSeconds(5));
        assertThatExceptionOfType(TimestampException.class)
                .isThrownBy(() -> service.stamp(new byte[32]))
                .withMessageContaining("no timestamp from");
    }

    @ParameterizedTest
    @ValueSource(strings = {"ftp://example.org/", "file:///etc/passwd", "example.org", "http:///"})
    void refusesOtherAddresses(String address) {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> new TimestampService(URI.create(address), Duration.ofSeconds(1)))
                .withMessageContaining("http or https");
    }

    @Test
    void aTokenOverSomethingElseIsNotTaken() throws Exception {
        try (LoopbackTimestampAuthority authority =
                new LoopbackTimestampAuthority(Manner.HONEST, STAMPED, "SHA256withRSA")) {
            TimestampSource crossed = sha256 -> service(authority).stamp(new byte[32]);
            assertThatExceptionOfType(TimestampException.class)
                    .isThrownBy(() -> SampleReport.sealed(KEY, crossed))
                    .withMessageContaining("stamps something else");
        }
        for (byte[] nonsense : new byte[][] {{}, {0x30, 0}, {1, 2, 3}}) {
            assertThatExceptionOfType(TimestampException.class)
                    .isThrownBy(() -> SampleReport.sealed(KEY, sha256 -> nonsense));
        }
    }

    @Test
    void aClaimLaterThanTheTimestampIsFound() throws Exception {
        try (LoopbackTimestampAuthority authority =
                new LoopbackTimestampAuthority(Manner.HONEST, SampleReport.SEALED.minusSeconds(24), "SHA256withRSA")) {
            byte[] late = Seal.sign(
                    SampleReport.forSealing(),
                    KEY,
                    SampleReport.SEALED.plusSeconds(600),
                    Optional.of(service(authority)));
            assertThat(Recheck.of(late).findings())
                    .extracting(RecheckReport.Finding::kind)
                    .containsExactly(RecheckReport.Kind.TIME_UNSOUND);
        }
    }

    private static TimestampService service(LoopbackTimestampAuthority authority) {
        return new TimestampService(authority.address(), Duration.ofSeconds(60));
    }
}
