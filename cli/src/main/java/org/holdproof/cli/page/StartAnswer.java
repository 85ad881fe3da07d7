package org.holdproof.cli.page;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.time.ZoneId;
import org.holdproof.cli.demo.DemoBatch;
import org.holdproof.cli.demo.DemoKitchen;
import org.holdproof.core.batch.Ending;
import org.holdproof.core.batch.Instrument;
import org.holdproof.core.batch.Product;
import org.holdproof.core.batch.Stage;
import org.holdproof.core.rules.AuthorityProfile;
import org.holdproof.core.rules.RuleLibrary;

/** What the page needs to know once: the rules there are, the words a record uses, and the kitchen. */
record StartAnswer(RuleLibrary library, Kitchen kitchen, PageSettings settings) {
    ObjectNode json() throws IOException {
        ObjectNode json = Asked.MAPPER.createObjectNode();
        ArrayNode authorities = json.putArray("authorities");
        for (AuthorityProfile profile : library.profiles()) {
            ArrayNode units = authorities
                    .addObject()
                    .put("id", profile.id())
                    .put("title", profile.title())
                    .putArray("units");
            profile.units().forEach(unit -> units.add(unit.name().substring(0, 1)));
        }
        json.put("edition", library.edition());
        ArrayNode species = json.putArray("species");
        for (Product.Species one : Product.Species.values()) {
            species.add(one.title());
        }
        ArrayNode stages = json.putArray("stages");
        for (Stage.Kind kind : Stage.Kind.values()) {
            stages.addObject().put("name", kind.title()).put("moment", kind.isMoment());
        }
        ArrayNode endings = json.putArray("endings");
        for (Ending.How how : Ending.How.values()) {
            endings.add(how.title());
        }
        ArrayNode methods = json.putArray("methods");
        for (Instrument.Method method : Instrument.Method.values()) {
            methods.add(method.title());
        }
        ArrayNode zones = json.putArray("zones");
        ZoneId.getAvailableZoneIds().stream()
                .filter(zone -> zone.contains("/") && !zone.startsWith("Etc/") && !zone.startsWith("SystemV/"))
                .sorted()
                .forEach(zones::add);
        ArrayNode demo = json.putArray("demo");
        for (DemoBatch batch : DemoKitchen.batches()) {
            demo.addObject().put("name", batch.name()).put("story", batch.story());
        }
        json.put("demoStatement", DemoKitchen.STATEMENT);
        json.set("kitchen", kitchen.describe());
        json.put("growing", settings.log().isPresent());
        return json;
    }
}
