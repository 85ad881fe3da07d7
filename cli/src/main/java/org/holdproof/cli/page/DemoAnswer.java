package org.holdproof.cli.page;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import org.holdproof.cli.demo.DemoBatch;
import org.holdproof.cli.demo.DemoKitchen;

/** One of the demo's cooks, as if its two files had been handed in. */
final class DemoAnswer {
    private final Shelf shelf;

    DemoAnswer(Shelf shelf) {
        this.shelf = shelf;
    }

    ObjectNode json(Asked asked) throws Fault, IOException {
        String name = asked.text("name");
        for (DemoBatch batch : DemoKitchen.batches()) {
            if (batch.name().equals(name)) {
                byte[] log = batch.log().getBytes(StandardCharsets.UTF_8);
                Shelf.Item item = shelf.take(new ByteArrayInputStream(log), log.length);
                ObjectNode json = Asked.MAPPER
                        .createObjectNode()
                        .put("record", batch.record())
                        .put("story", batch.story());
                json.putArray("logs").addObject().put("file", item.id()).put("name", batch.logFile());
                return json;
            }
        }
        throw Fault.missing("The demo has no cook of this name.");
    }
}
