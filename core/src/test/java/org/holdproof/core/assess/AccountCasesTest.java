package org.holdproof.core.assess;

import static org.assertj.core.api.Assertions.assertThat;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Objects;
import java.util.stream.Stream;
import org.holdproof.core.batch.Product;
import org.holdproof.core.verdict.Assessment;
import org.holdproof.core.verdict.Check;
import org.holdproof.core.verdict.Verdict;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** Records whose verdict a document settles; each row names the document. The logs are invented. */
class AccountCasesTest {
    static Stream<Arguments> cases() {
        try (InputStream in = Objects.requireNonNull(AccountCasesTest.class.getResourceAsStream("account-cases.csv"));
                CsvReader<NamedCsvRecord> rows =
                        CsvReader.builder().ofNamedCsvRecord(new InputStreamReader(in, StandardCharsets.UTF_8))) {
            return rows.stream()
                    .map(row -> Arguments.of(row.getField("id"), row.getField("source"), row))
                    .toList()
                    .stream();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    @ParameterizedTest(name = "{0} [{1}]")
    @MethodSource("cases")
    void theRecordComesOutAsItsDocumentSays(String id, String source, NamedCsvRecord row) {
        Assessment assessment = cook(row).assess();

        String said = assessment.checks().stream()
                .map(check -> check.id() + " " + check.verdict().words() + ": " + check.rule() + " | " + check.why())
                .reduce("", (one, other) -> one + "\n" + other);
        assertThat(assessment.verdict().words()).as(row.getField("note") + said).isEqualTo(row.getField("verdict"));
        String asked = row.getField("check");
        if (!asked.isEmpty()) {
            assertThat(assessment.checks().stream()
                            .filter(check ->
                                    check.id().equals(asked) || check.id().startsWith(asked + "."))
                            .map(Check::verdict)
                            .reduce(Verdict.MET, Verdict::and)
                            .words())
                    .as(asked + said)
                    .isEqualTo(row.getField("check_verdict"));
        }
        if (id.startsWith("S11") || id.equals("S12")) {
            assertThat(assessment.cautions()).anyMatch(caution -> caution.id().startsWith("come-up."));
        }
    }

    static ScriptedCook cook(NamedCsvRecord row) {
        return ScriptedCook.of(
                row.getField("authority"),
                Arrays.stream(Product.Species.values())
                        .filter(species -> species.title().equals(row.getField("species")))
                        .findFirst()
                        .orElseThrow(),
                Arrays.stream(Product.Form.values())
                        .filter(form -> form.title().equals(row.getField("form")))
                        .findFirst()
                        .orElse(Product.Form.COMMINUTED),
                row.getField("series"),
                row.getField("stages"),
                row.getField("end"));
    }
}
