package org.holdproof.cli.page;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.Socket;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.util.Map;

/** Asks a page's server what the page would ask, and what a stranger might. */
final class Caller {
    static final ObjectMapper JSON = new ObjectMapper();

    private final PageServer server;
    private final HttpClient client = HttpClient.newHttpClient();

    Caller(PageServer server) {
        this.server = server;
    }

    private String origin() {
        return "http://127.0.0.1:" + server.address().getPort();
    }

    HttpResponse<byte[]> get(String place) throws Exception {
        return client.send(
                HttpRequest.newBuilder(server.address().resolve(place)).build(), BodyHandlers.ofByteArray());
    }

    HttpResponse<byte[]> post(String place, byte[] body) throws Exception {
        HttpRequest request = HttpRequest.newBuilder(server.address().resolve(place))
                .header("Origin", origin())
                .POST(BodyPublishers.ofByteArray(body))
                .build();
        return client.send(request, BodyHandlers.ofByteArray());
    }

    HttpResponse<byte[]> ask(String question, Object asked) throws Exception {
        return post("ask/" + question, JSON.writeValueAsBytes(asked));
    }

    JsonNode answer(String question, Object asked) throws Exception {
        HttpResponse<byte[]> response = ask(question, asked);
        if (response.statusCode() != 200) {
            throw new AssertionError(question + ": " + response.statusCode() + " " + text(response));
        }
        return JSON.readTree(response.body());
    }

    /** Hands a file in and gives its id. */
    String handIn(byte[] file) throws Exception {
        return JSON.readTree(post("ask/file", file).body()).path("file").asText();
    }

    static Map<String, Object> cook(String file, String name, String record) {
        return Map.of("logs", new Object[] {Map.of("file", file, "name", name)}, "record", record);
    }

    static String text(HttpResponse<byte[]> response) {
        return new String(response.body(), StandardCharsets.UTF_8);
    }

    /** Sends bytes as they are, and gives what comes back. */
    String raw(String request) throws IOException {
        URI address = server.address();
        try (Socket socket = new Socket(address.getHost(), address.getPort())) {
            socket.setSoTimeout(10_000);
            OutputStream out = socket.getOutputStream();
            out.write(request.getBytes(StandardCharsets.ISO_8859_1));
            out.flush();
            InputStream in = socket.getInputStream();
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        }
    }

    /** A request line and its header fields, for {@link #raw}. */
    String lines(String method, String path, String... fields) {
        StringBuilder request = new StringBuilder(method + " " + path + " HTTP/1.1\r\n");
        for (String field : fields) {
            request.append(field).append("\r\n");
        }
        return request.append("Connection: close\r\n\r\n").toString();
    }
}
