package org.holdproof.cli.page;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.OptionalDouble;
import org.holdproof.core.batch.Product;
import org.holdproof.core.quantity.Boundary;
import org.holdproof.core.rules.AuthorityProfile;
import org.holdproof.core.rules.CoolingRule;
import org.holdproof.core.rules.LethalityRow;

/** The temperatures an authority's rules name for a food, to be drawn across the curve. */
final class RuleLines {
    private RuleLines() {}

    static ArrayNode of(AuthorityProfile authority, Product product) {
        return of(authority, product.species(), product.form(), product.fatPercent());
    }

    static ArrayNode of(
            AuthorityProfile authority, Product.Species species, Product.Form form, OptionalDouble fatPercent) {
        ArrayNode lines = Asked.MAPPER.createArrayNode();
        authority
                .lethalityFor(species, form)
                .flatMap(choice -> choice.rowsFor(fatPercent).stream().findFirst())
                .ifPresent(row -> lines.add(lethality(row)));
        authority.cooling().stream().findFirst().ifPresent(rule -> cooling(lines, rule));
        return lines;
    }

    private static ObjectNode lethality(LethalityRow row) {
        return line("lethality", row.at()).put("minutes", row.seconds() / 60);
    }

    private static void cooling(ArrayNode lines, CoolingRule rule) {
        for (CoolingRule.Stage stage : rule.stages()) {
            if (stage.to().isPresent() && stage.maxMinutes().isPresent()) {
                lines.add(line("cooling." + stage.number(), stage.to().get())
                        .put("minutes", stage.maxMinutes().getAsDouble()));
            }
        }
    }

    private static ObjectNode line(String check, Boundary at) {
        return Asked.MAPPER
                .createObjectNode()
                .put("check", check)
                .put("celsius", at.celsius())
                .put("text", at.text());
    }
}
