package org.holdproof.cli.page;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.networknt.schema.JsonSchema;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SpecVersion;
import com.networknt.schema.ValidationMessage;
import java.io.IOException;
import java.io.InputStream;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.holdproof.cli.demo.DemoBatch;
import org.holdproof.cli.demo.DemoKitchen;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Every answer is what {@code contract.json} says it is. */
class ContractTest {
    @TempDir
    private Path folder = Path.of("");

    private PageServer server;
    private Caller caller;
    private JsonNode contract;

    @BeforeEach
    void start() throws IOException {
        server = PageServer.start(PageSettings.of(folder.resolve("kitchen"), Optional.of(growing())));
        caller = new Caller(server);
        try (InputStream in = PageServer.class.getResourceAsStream("contract.json")) {
            contract = Caller.JSON.readTree(in);
        }
    }

    @AfterEach
    void stop() throws IOException {
        server.close();
    }

    private Path growing() throws IOException {
        String log = DemoKitchen.batches().get(2).log();
        return Files.writeString(folder.resolve("growing.csv"), log.substring(0, log.length() / 2));
    }

    /** The schema of a question's body, or of its answer. */
    private JsonSchema schema(String question, String pointer) throws IOException {
        ObjectNode schema =
                (ObjectNode) contract.at("/paths/~1ask~1" + question + pointer).deepCopy();
        schema.set("components", contract.path("components"));
        JsonNode assessment = schema.at("/properties/assessment");
        if (assessment.isObject()) {
            try (InputStream in =
                    PageServer.class.getResourceAsStream("/org/holdproof/schema/assessment.schema.json")) {
                ObjectNode own = (ObjectNode) Caller.JSON.readTree(in);
                own.put("$id", "https://holdproof.org/schema/assessment.json");
                ((ObjectNode) schema.path("properties")).set("assessment", own);
            }
        }
        return JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012).getSchema(schema);
    }

    private JsonNode asked(String question, Object body) throws Exception {
        requireFits(
                question + ", asked",
                schema(question, "/post/requestBody/content/application~1json/schema"),
                Caller.JSON.valueToTree(body));
        JsonNode answer = caller.answer(question, body);
        requireFits(
                question + ", answered",
                schema(question, "/post/responses/200/content/application~1json/schema"),
                answer);
        return answer;
    }

    private static void requireFits(String what, JsonSchema schema, JsonNode json) {
        Set<ValidationMessage> wrong = schema.validate(json);
        assertThat(wrong).as(what).isEmpty();
    }

    @Test
    void every_question_the_page_asks_is_in_the_contract() throws IOException {
        Set<String> listed = new HashSet<>();
        contract.path("paths").fieldNames().forEachRemaining(name -> listed.add(name.substring("/ask/".length())));
        Set<String> seam = new HashSet<>();
        try (InputStream in = PageServer.class.getResourceAsStream("seam.js")) {
            Matcher call = Pattern.compile("(?:json|ask)\\(\"([a-z]+)\"")
                    .matcher(new String(in.readAllBytes(), StandardCharsets.UTF_8));
            while (call.find()) {
                seam.add(call.group(1));
            }
        }
        assertThat(seam).isEqualTo(listed);
    }

    @Test
    void every_answer_is_what_the_contract_says() throws Exception {
        asked("start", Map.of());
        asked("batches", Map.of());
        asked("grown", Map.of());
        for (DemoBatch batch : DemoKitchen.batches()) {
            JsonNode demo = asked("demo", Map.of("name", batch.name()));
            asked("record", Map.of("record", batch.record()));
            Map<String, Object> cook = Caller.cook(demo.at("/logs/0/file").asText(), batch.logFile(), batch.record());
            asked("judge", cook);
            asked("status", cook);
            asked(
                    "read",
                    Map.of(
                            "file",
                            demo.at("/logs/0/file").asText(),
                            "name",
                            batch.logFile(),
                            "settings",
                            Map.of("zone", "America/Chicago")));
        }
        JsonNode brisket =
                asked("demo", Map.of("name", DemoKitchen.batches().get(0).name()));
        JsonNode proposed = asked(
                "propose",
                Map.of(
                        "file",
                        brisket.at("/logs/0/file").asText(),
                        "name",
                        brisket.at("/logs/0/name").asText(),
                        "settings",
                        Map.of("zone", "America/Chicago"),
                        "core",
                        "Core",
                        "bath",
                        "Bath",
                        "air",
                        "Smoker"));
        assertThat(proposed.path("proposals").findValuesAsText("stage")).contains("smoke", "bath", "chill");
        asked("limits", Map.of("authority", "us-fsis-2021", "species", "beef", "form", "intact"));
        asked("lesson", Map.of("cut", "beef", "left", 50, "right", 58, "millimetres", 70));
        for (int bath : new int[] {50, 63}) {
            asked(
                    "plan",
                    Map.of(
                            "authority",
                            "us-food-code-2022",
                            "species",
                            "beef",
                            "form",
                            "intact",
                            "shape",
                            "slab",
                            "millimetres",
                            60,
                            "bathCelsius",
                            bath));
        }
    }

    @Test
    void a_batch_is_sealed_kept_opened_and_checked() throws Exception {
        asked("kitchen", Map.of("name", "A kitchen", "timeZone", "America/Chicago"));
        asked("key", Map.of("name", "A kitchen", "passphrase", "long enough now"));
        assertThat(caller.ask("key", Map.of("name", "A kitchen", "passphrase", "another one now"))
                        .statusCode())
                .isEqualTo(409);
        DemoBatch batch = DemoKitchen.batches().get(2);
        String file = caller.handIn(batch.log().getBytes(StandardCharsets.UTF_8));
        Map<String, Object> cook = new java.util.HashMap<>(Caller.cook(file, batch.logFile(), batch.record()));
        cook.put("passphrase", "not this one");
        assertThat(caller.ask("seal", cook).statusCode()).isEqualTo(422);
        cook.put("passphrase", "long enough now");
        JsonNode first = asked("seal", cook);
        JsonNode second = asked("seal", cook);
        assertThat(first.path("pdf").asText()).isNotEqualTo(second.path("pdf").asText());
        assertThat(Files.readString(Path.of(first.path("log").asText()))).isEqualTo(batch.log());
        assertThat(Files.readString(Path.of(first.path("record").asText()))).isEqualTo(batch.record());
        assertThat(asked("batches", Map.of()).path("batches")).hasSize(2);
        JsonNode opened = asked("open", Map.of("batch", first.path("batch").asText()));
        assertThat(opened.path("record").asText()).isEqualTo(batch.record());
        assertThat(opened.at("/logs/0/file").asText()).isEqualTo(file);

        String report =
                caller.handIn(Files.readAllBytes(Path.of(first.path("pdf").asText())));
        JsonNode whole = asked("recheck", Map.of("file", report));
        assertThat(whole.path("state").asText()).isEqualTo("intact");
        assertThat(whole.path("differences")).isEmpty();
        assertThat(whole.path("published").asBoolean()).isTrue();
        assertThat(whole.path("verdict").asText()).isEqualTo("NOT MET");
        assertThat(asked("recheck", Map.of("file", report, "fingerprint", "00".repeat(32)))
                        .path("state")
                        .asText())
                .isEqualTo("other signer");
        List<String> roles = new ArrayList<>();
        whole.path("inside").forEach(one -> roles.add(one.path("role").asText()));
        assertThat(roles).contains("log", "batch_record", "assessment", "tables");
        HttpResponse<byte[]> log = caller.ask("inside", Map.of("file", report, "role", "log"));
        assertThat(Caller.text(log)).isEqualTo(batch.log());
    }

    @Test
    void a_broken_report_has_no_verdict() throws Exception {
        byte[] unsealed = caller.ask(
                        "report",
                        Caller.cook(
                                caller.handIn(DemoKitchen.batches().get(0).log().getBytes(StandardCharsets.UTF_8)),
                                "x.csv",
                                DemoKitchen.batches().get(0).record()))
                .body();
        JsonNode told = asked("recheck", Map.of("file", caller.handIn(unsealed)));
        assertThat(told.path("state").asText()).isEqualTo("unsealed");
        assertThat(told.has("verdict")).isFalse();
        assertThat(told.has("checks")).isFalse();
    }

    @Test
    void a_growing_log_ends_with_its_last_whole_line() throws Exception {
        JsonNode grown = asked("grown", Map.of());
        JsonNode log = asked(
                        "read",
                        Map.of(
                                "file",
                                grown.path("file").asText(),
                                "name",
                                grown.path("name").asText(),
                                "settings",
                                Map.of("start", 1_929_000_000_000L)))
                .path("log");
        String written = Files.readString(folder.resolve("growing.csv"));
        long lines = written.substring(0, written.lastIndexOf('\n')).lines().count();
        assertThat(log.path("rows").asLong()).isEqualTo(lines - 1);
    }
}
