package org.holdproof.core.assess;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.holdproof.core.rules.AuthorityProfile;
import org.holdproof.core.rules.Rule;
import org.holdproof.core.rules.RuleLibrary;
import org.junit.jupiter.api.Test;

/** The table of conditions by authority in DEVELOPERS.md says what the profiles say. */
class ConditionTableTest {
    private static final String BEGIN = "<!-- conditions -->\n";
    private static final String END = "<!-- /conditions -->";
    private static final String NOT_HELD = "not held";

    @Test
    void theTableIsTheProfiles() throws IOException {
        Path file = Path.of("DEVELOPERS.md");
        for (Path up = Path.of("").toAbsolutePath(); up != null; up = up.getParent()) {
            if (Files.exists(up.resolve("DEVELOPERS.md"))) {
                file = up.resolve("DEVELOPERS.md");
                break;
            }
        }
        String text = Files.readString(file, StandardCharsets.UTF_8);

        assertThat(text).contains(BEGIN, END);
        assertThat(text.substring(text.indexOf(BEGIN) + BEGIN.length(), text.indexOf(END)))
                .isEqualTo(table());
    }

    private static String table() {
        StringBuilder table = new StringBuilder(
                "| authority | come-up | hot | under hot | cooling | cold | days | reheat | to order |"
                        + " time alone |\n| --- | --- | --- | --- | --- | --- | --- | --- | --- | --- |\n");
        for (AuthorityProfile profile : RuleLibrary.builtIn().profiles()) {
            table.append("| ")
                    .append(String.join(
                            " | ",
                            profile.id(),
                            profile.comeUp()
                                    .map(Rule::id)
                                    .orElse(profile.comeUpGuidance().isPresent() ? "caution" : NOT_HELD),
                            id(profile.hotHold()),
                            id(profile.hotAllowance()),
                            ids(profile.cooling()),
                            id(profile.coldHold()),
                            ids(profile.shelfLives()),
                            id(profile.reheat()),
                            id(profile.reheatToOrder()),
                            ids(profile.timeLimits())))
                    .append(" |\n");
        }
        return table.toString();
    }

    private static String id(Optional<? extends Rule> rule) {
        return rule.map(Rule::id).orElse(NOT_HELD);
    }

    private static String ids(List<? extends Rule> rules) {
        return rules.isEmpty() ? NOT_HELD : rules.stream().map(Rule::id).collect(Collectors.joining(", "));
    }
}
