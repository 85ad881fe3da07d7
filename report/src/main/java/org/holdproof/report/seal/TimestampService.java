package org.holdproof.report.seal;

import java.io.IOException;
import java.io.InputStream;
import java.math.BigInteger;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.net.http.HttpTimeoutException;
import java.security.SecureRandom;
import java.time.Duration;
import java.util.Locale;
import org.bouncycastle.asn1.nist.NISTObjectIdentifiers;
import org.bouncycastle.tsp.TSPException;
import org.bouncycastle.tsp.TimeStampRequest;
import org.bouncycastle.tsp.TimeStampRequestGenerator;
import org.bouncycastle.tsp.TimeStampResponse;

/** A timestamp authority reached over HTTP (RFC 3161, 3.4). */
public final class TimestampService implements TimestampSource {
    private static final int LARGEST_ANSWER = 1 << 20;

    private final URI address;
    private final Duration patience;

    /**
     * @param address its http or https address
     * @param patience how long to wait, for the connection and for the answer each
     * @throws IllegalArgumentException if the address is neither http nor https
     */
    public TimestampService(URI address, Duration patience) {
        String scheme = address.getScheme() == null ? "" : address.getScheme().toLowerCase(Locale.ROOT);
        if (!(scheme.equals("http") || scheme.equals("https")) || address.getHost() == null) {
            throw new IllegalArgumentException(
                    "a timestamp authority needs an http or https address; found \"" + address + "\"");
        }
        this.address = address;
        this.patience = patience;
    }

    public URI address() {
        return address;
    }

    @Override
    public byte[] stamp(byte[] sha256) throws TimestampException {
        TimeStampRequestGenerator generator = new TimeStampRequestGenerator();
        generator.setCertReq(true);
        TimeStampRequest request =
                generator.generate(NISTObjectIdentifiers.id_sha256, sha256, new BigInteger(64, new SecureRandom()));
        try {
            TimeStampResponse response = new TimeStampResponse(post(request.getEncoded()));
            // Status, imprint, nonce, policy, and the certificate named.
            response.validate(request);
            if (response.getTimeStampToken() == null) {
                throw refused(String.valueOf(response.getStatusString()));
            }
            return response.getTimeStampToken().getEncoded();
        } catch (HttpTimeoutException late) {
            throw failed("it did not answer within " + patience.toSeconds() + " s");
        } catch (TSPException unfit) {
            throw failed("its answer does not fit the request (" + unfit.getMessage() + ")");
        } catch (IOException broken) {
            throw failed(broken.getMessage() == null ? "it cannot be reached" : broken.getMessage());
        } catch (InterruptedException stopped) {
            Thread.currentThread().interrupt();
            throw failed("the wait was interrupted");
        }
    }

    private byte[] post(byte[] request) throws IOException, InterruptedException, TimestampException {
        HttpClient client = HttpClient.newBuilder().connectTimeout(patience).build();
        HttpResponse<InputStream> response = client.send(
                HttpRequest.newBuilder(address)
                        .timeout(patience)
                        .header("Content-Type", "application/timestamp-query")
                        .header("Accept", "application/timestamp-reply")
                        .POST(HttpRequest.BodyPublishers.ofByteArray(request))
                        .build(),
                HttpResponse.BodyHandlers.ofInputStream());
        try (InputStream body = response.body()) {
            if (response.statusCode() != 200) {
                throw failed("it answered with HTTP status " + response.statusCode());
            }
            byte[] answer = body.readNBytes(LARGEST_ANSWER + 1);
            if (answer.length > LARGEST_ANSWER) {
                throw failed("its answer is longer than any timestamp");
            }
            return answer;
        }
    }

    private TimestampException refused(String reason) {
        return failed("it refused (" + reason + ")");
    }

    private TimestampException failed(String reason) {
        return new TimestampException("no timestamp from " + address + ": " + reason
                + ". Try again, give another timestamp authority, or seal without a timestamp.");
    }
}
