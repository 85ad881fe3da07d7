package org.holdproof.cli.page;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.net.Inet4Address;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.NetworkInterface;
import java.net.Socket;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.Stream;
import org.holdproof.cli.demo.DemoBatch;
import org.holdproof.cli.demo.DemoKitchen;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class PageServerTest {
    private static final long LARGEST = 8 << 20;

    @TempDir
    private Path folder = Path.of("");

    private PageServer server;
    private Caller caller;
    private Set<Path> before;

    @BeforeEach
    void start() throws IOException {
        before = shelves();
        server = PageServer.start(
                new PageSettings(folder.resolve("kitchen"), Optional.empty(), OptionalInt.empty(), LARGEST));
        caller = new Caller(server);
    }

    @AfterEach
    void stop() throws IOException {
        server.close();
        assertThat(shelves()).as("nothing is left behind").isEqualTo(before);
    }

    private static Set<Path> shelves() throws IOException {
        try (Stream<Path> all = Files.list(Path.of(System.getProperty("java.io.tmpdir")))) {
            return new HashSet<>(all.filter(one -> one.getFileName().toString().startsWith("holdproof-page-"))
                    .toList());
        }
    }

    private List<Path> onShelf() throws IOException {
        List<Path> files = new ArrayList<>();
        for (Path shelf : shelves()) {
            if (!before.contains(shelf)) {
                try (Stream<Path> all = Files.list(shelf)) {
                    all.forEach(files::add);
                }
            }
        }
        return files;
    }

    @Test
    void serves_the_page_and_every_file_it_names() throws Exception {
        HttpResponse<byte[]> page = caller.get("");
        assertThat(page.statusCode()).isEqualTo(200);
        for (String name : List.of("charts.js", "charts.css", "style.css", "main.js", "screens/door.js", "icon.svg")) {
            assertThat(caller.get(name).statusCode()).as(name).isEqualTo(200);
        }
        assertThat(page.headers().firstValue("Content-Security-Policy").orElse(""))
                .contains("default-src 'none'", "script-src 'self'", "frame-ancestors 'none'")
                .doesNotContain("unsafe");
        assertThat(page.headers().firstValue("X-Content-Type-Options")).contains("nosniff");
        assertThat(page.headers().firstValue("Referrer-Policy")).contains("no-referrer");
        assertThat(page.headers().firstValue("Cache-Control")).contains("no-store");
        assertThat(page.headers().firstValue("Set-Cookie")).isEmpty();
        assertThat(page.headers().firstValue("Server")).isEmpty();
    }

    @Test
    void answers_on_the_loopback_address_alone() throws IOException {
        int port = server.address().getPort();
        for (NetworkInterface network : Collections.list(NetworkInterface.getNetworkInterfaces())) {
            for (InetAddress address : Collections.list(network.getInetAddresses())) {
                if (address instanceof Inet4Address && !address.isLoopbackAddress()) {
                    try (Socket socket = new Socket()) {
                        socket.connect(new InetSocketAddress(address, port), 500);
                        throw new AssertionError("reached at " + address);
                    } catch (IOException refused) {
                        assertThat(refused).hasMessageNotContaining("reached");
                    }
                }
            }
        }
        assertThat(InetAddress.getByName(server.address().getHost()).isLoopbackAddress())
                .isTrue();
    }

    @Test
    void two_pages_have_two_tokens() throws IOException {
        try (PageServer other = PageServer.start(PageSettings.of(folder, Optional.empty()))) {
            assertThat(other.address().getPath()).isNotEqualTo(server.address().getPath());
            assertThat(other.address().getPath()).matches("/[0-9a-f]{32}/");
        }
    }

    @Test
    void lets_nobody_in_but_the_page() throws IOException {
        String root = server.address().getPath();
        String host = "Host: 127.0.0.1:" + server.address().getPort();
        String origin = "Origin: http://127.0.0.1:" + server.address().getPort();
        assertThat(caller.raw(caller.lines("GET", root, host))).startsWith("HTTP/1.1 200");
        String start = root + "ask/start";
        String length = "Content-Length: 0";
        List<String> strangers = List.of(
                caller.lines("GET", "/", host),
                caller.lines("GET", "/" + "0".repeat(32) + "/", host),
                caller.lines(
                        "GET",
                        root,
                        "Host: holdproof.example:" + server.address().getPort()),
                caller.lines("GET", root, "Host: 127.0.0.1"),
                caller.lines("GET", root, host, "Origin: http://evil.example"),
                caller.lines("GET", root, host, "Sec-Fetch-Site: cross-site"),
                caller.lines("POST", start, host, length),
                caller.lines("POST", start, host, length, "Origin: null"),
                caller.lines("POST", start, host, length, "Origin: http://localhost:1"),
                caller.lines("POST", start, host, length, origin, "Sec-Fetch-Site: cross-site"),
                caller.lines("POST", start, host, length, origin, "Sec-Fetch-Site: same-site"));
        for (String stranger : strangers) {
            assertThat(caller.raw(stranger))
                    .as(stranger)
                    .startsWith("HTTP/1.1 404")
                    .doesNotContain("authorities");
        }
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "../../pom.xml",
                "..%2f..%2fpom.xml",
                "%2e%2e/%2e%2e/etc/passwd",
                "screens/../../Gate.class",
                "Gate.class",
                "nothing.js",
                "ask/start",
                "screens//door.js"
            })
    void serves_nothing_else(String place) throws Exception {
        String answer = caller.raw(caller.lines(
                "GET",
                server.address().getPath() + place,
                "Host: 127.0.0.1:" + server.address().getPort()));
        assertThat(answer).matches("(?s)HTTP/1.1 4\\d\\d.*");
        requireNoTrace(answer);
    }

    @Test
    void malformed_requests_get_words_and_no_trace() throws IOException {
        String host = "Host: 127.0.0.1:" + server.address().getPort();
        String root = server.address().getPath();
        for (String request : List.of(
                "NONSENSE\r\n\r\n",
                "GET / HTTP/9.9\r\n\r\n",
                caller.lines("GET", root + "%zz", host),
                caller.lines("GET", root, host, host),
                caller.lines("GET", root, host, "Content-Length: -5"),
                caller.lines("GET", root, host, "X: " + "y".repeat(20_000)))) {
            String answer = caller.raw(request);
            assertThat(answer).as(request).matches("(?s)HTTP/1.1 [45]\\d\\d.*");
            requireNoTrace(answer);
        }
    }

    static void requireNoTrace(String answer) {
        assertThat(answer).doesNotContain("Exception", "at org.", "at java.", ".java:", "Jetty", "jetty");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "start",
                "read",
                "readings",
                "record",
                "limits",
                "judge",
                "figures",
                "kitchen",
                "key",
                "batches",
                "open",
                "demo",
                "nothing",
                ""
            })
    void nonsense_asked_gets_words_and_no_trace(String question) throws Exception {
        for (String body : List.of(
                "",
                "{",
                "[]",
                "null",
                "{\"file\":1}",
                "{\"file\":\"../../etc/passwd\",\"name\":\"x\",\"settings\":{}}",
                "{\"batch\":\"../../etc/passwd\"}",
                "{\"batch\":\"2031/..\"}",
                "{\"logs\":[{\"file\":\"x\",\"name\":\"y\"}],\"record\":\"{}\"}",
                "[".repeat(5000),
                "{\"a\":".repeat(2000))) {
            HttpResponse<byte[]> response = caller.post("ask/" + question, body.getBytes(StandardCharsets.UTF_8));
            assertThat(response.statusCode()).as(question + " " + body).isLessThan(500);
            requireNoTrace(Caller.text(response));
        }
    }

    @Test
    void judges_as_the_command_does_to_the_byte() throws Exception {
        for (DemoBatch batch : DemoKitchen.batches()) {
            Path log = Files.writeString(folder.resolve(batch.logFile()), batch.log());
            Path record = Files.writeString(folder.resolve(batch.recordFile()), batch.record());
            Path figures = folder.resolve("figures.json");
            org.holdproof.cli.Holdproof.run(
                    "verify", log.toString(), "--batch", record.toString(), "--json", figures.toString());
            String id = caller.handIn(Files.readAllBytes(log));
            Map<String, Object> cook = Caller.cook(id, batch.logFile(), batch.record());
            assertThat(caller.ask("figures", cook).body()).as(batch.name()).isEqualTo(Files.readAllBytes(figures));
            assertThat(Caller.text(caller.ask("judge", cook)))
                    .endsWith("\"assessment\":" + Files.readString(figures) + "}");
        }
    }

    @Test
    void a_log_is_told_in_plain_figures() throws Exception {
        JsonNode demo = caller.answer("demo", Map.of("name", "4-probe-gap"));
        JsonNode log = caller.answer(
                        "read",
                        Map.of(
                                "file",
                                demo.at("/logs/0/file").asText(),
                                "name",
                                demo.at("/logs/0/name").asText(),
                                "settings",
                                Map.of("zone", "America/Chicago", "dates", "mdy")))
                .path("log");
        assertThat(log.path("rows").asInt()).isEqualTo(268);
        assertThat(log.path("everySeconds").asDouble()).isEqualTo(60);
        assertThat(log.path("channels")).hasSize(3);
        assertThat(log.path("series").path("times")).hasSize(268);
        assertThat(log.path("gaps")).hasSize(3);
        assertThat(log.at("/gaps/0/to").asLong() - log.at("/gaps/0/from").asLong())
                .isEqualTo(126 * 60_000);
        assertThat(log.path("faults").findValuesAsText("kind")).contains("gap");
    }

    @Test
    void asks_what_a_log_leaves_open_and_shows_every_reading_of_it() throws Exception {
        String log = "Date;Time;Core °C\n07.06.2031;10:00;4,0\n07.06.2031;10:01;5,0\n07.06.2031;10:02;6,0\n";
        String id = caller.handIn(log.getBytes(StandardCharsets.UTF_8));
        JsonNode question = caller.answer(
                        "read", Map.of("file", id, "name", "x.csv", "settings", Map.of("zone", "Europe/Oslo")))
                .path("question");
        assertThat(question.path("asks").asText()).isEqualTo("dates");
        assertThat(question.path("choices").findValuesAsText("value")).containsExactly("dmy", "mdy");
        assertThat(question.at("/choices/0/log/from").asLong()).isEqualTo(1_938_585_600_000L);
        assertThat(question.at("/around/lines").toString()).contains("07.06.2031;10:00;4,0");
    }

    @Test
    void says_which_cell_cannot_be_read() throws Exception {
        String log = "Time,Core (°C)\n2031-01-01T10:00Z,50.1\n2031-01-01T10:01Z,5O.6\n2031-01-01T10:02Z,50.9\n";
        String id = caller.handIn(log.getBytes(StandardCharsets.UTF_8));
        HttpResponse<byte[]> response =
                caller.ask("read", Map.of("file", id, "name", "x.csv", "settings", Map.of("zone", "Europe/Oslo")));
        assertThat(response.statusCode()).isEqualTo(422);
        JsonNode fault = Caller.JSON.readTree(response.body()).path("fault");
        assertThat(fault.path("line").asInt()).isEqualTo(3);
        assertThat(fault.path("column").asText()).isNotEmpty();
        assertThat(fault.path("found").asText()).contains("5O.6");
        assertThat(fault.path("remedy").asText()).isNotEmpty();
        assertThat(fault.at("/around/lines")).hasSize(3);
    }

    @Test
    void a_file_too_large_is_refused_and_leaves_nothing() throws Exception {
        HttpResponse<byte[]> response = caller.post("ask/file", new byte[(int) LARGEST + 1]);
        assertThat(response.statusCode()).isEqualTo(413);
        assertThat(Caller.text(response)).contains("larger than 8 MiB");
        assertThat(onShelf()).isEmpty();
    }

    @Test
    void fifty_uploads_at_once_all_arrive() throws Exception {
        ExecutorService many = Executors.newFixedThreadPool(50);
        try {
            List<Future<String>> sent = new ArrayList<>();
            for (int i = 0; i < 50; i++) {
                byte[] file = ("log " + i + "\n" + "x".repeat(200_000)).getBytes(StandardCharsets.UTF_8);
                sent.add(many.submit(() -> caller.handIn(file)));
            }
            Set<String> ids = new HashSet<>();
            for (Future<String> one : sent) {
                ids.add(one.get());
            }
            assertThat(ids).hasSize(50).allMatch(id -> id.matches("[0-9a-f]{64}"));
            assertThat(onShelf()).hasSize(50);
        } finally {
            many.shutdownNow();
        }
    }

    @Test
    void a_cut_connection_leaves_nothing_behind() throws Exception {
        String host = "127.0.0.1:" + server.address().getPort();
        try (Socket socket =
                new Socket(InetAddress.getLoopbackAddress(), server.address().getPort())) {
            socket.getOutputStream()
                    .write(("POST " + server.address().getPath() + "ask/file HTTP/1.1\r\nHost: " + host
                                    + "\r\nOrigin: http://" + host + "\r\nContent-Length: 1000000\r\n\r\nhalf of it")
                            .getBytes(StandardCharsets.US_ASCII));
            socket.getOutputStream().flush();
            waitFor(() -> onShelf().size() == 1);
        }
        waitFor(() -> onShelf().isEmpty());
        assertThat(caller.get("").statusCode()).isEqualTo(200);
    }

    private interface Condition {
        boolean holds() throws IOException;
    }

    private static void waitFor(Condition condition) throws IOException, InterruptedException {
        for (int i = 0; i < 100 && !condition.holds(); i++) {
            Thread.sleep(50);
        }
        assertThat(condition.holds()).isTrue();
    }

    @Test
    void keeps_nothing_unasked() throws Exception {
        caller.answer("start", Map.of());
        JsonNode demo = caller.answer("demo", Map.of("name", "3-late-chill"));
        caller.answer(
                "judge",
                Caller.cook(
                        demo.at("/logs/0/file").asText(),
                        demo.at("/logs/0/name").asText(),
                        demo.path("record").asText()));
        caller.answer("batches", Map.of());
        assertThat(folder.resolve("kitchen")).doesNotExist();
    }

    @Test
    void only_loopback_is_spoken_of() throws Exception {
        for (String name : List.of("", "main.js", "seam.js", "style.css")) {
            assertThat(Caller.text(caller.get(name)).toLowerCase(Locale.ROOT))
                    .as(name)
                    .doesNotContain("https://")
                    .doesNotContain("//cdn");
        }
    }
}
