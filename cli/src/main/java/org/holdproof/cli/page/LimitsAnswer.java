package org.holdproof.cli.page;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.holdproof.core.batch.Product.Form;
import org.holdproof.core.batch.Product.Species;
import org.holdproof.core.quantity.QuantityKind;
import org.holdproof.core.quantity.UnreadableQuantityException;
import org.holdproof.core.rules.RuleLibrary;

/** The lines an authority's rules draw for a food, before the rest of the record is said. */
final class LimitsAnswer {
    private final RuleLibrary library;

    LimitsAnswer(RuleLibrary library) {
        this.library = library;
    }

    ObjectNode json(Asked asked) throws Fault {
        ObjectNode json = Asked.MAPPER.createObjectNode();
        String species = asked.text("species");
        String form = asked.text("form");
        json.set(
                "limits",
                RuleLines.of(
                        library.profile(asked.text("authority"))
                                .orElseThrow(() -> Fault.badRequest("There are no rules of this name.")),
                        Stream.of(Species.values())
                                .filter(one -> one.title().equals(species))
                                .findFirst()
                                .orElseThrow(() -> Fault.badRequest("There is no such species.")),
                        Stream.of(Form.values())
                                .filter(one -> one.title().equals(form))
                                .findFirst()
                                .orElseThrow(() -> Fault.badRequest("There is no such form.")),
                        fat(asked.optionalText("fat").orElse(""))));
        return json;
    }

    private static OptionalDouble fat(String text) {
        try {
            return text.isBlank() ? OptionalDouble.empty() : OptionalDouble.of(QuantityKind.PERCENT.parse(text));
        } catch (UnreadableQuantityException notYetWhole) {
            return OptionalDouble.empty();
        }
    }
}
