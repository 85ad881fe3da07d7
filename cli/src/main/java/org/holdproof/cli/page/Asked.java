package org.holdproof.cli.page;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.StreamReadConstraints;
import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.core.json.JsonReadFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.eclipse.jetty.server.Request;

/** What the page asks, as JSON; a member that is missing or of another kind is a fault. */
record Asked(JsonNode json) {
    /** A batch record has at most 1 MiB, and little stands beside it. */
    private static final int LARGEST = 4 << 20;

    private static final int DEEPEST = 32;

    /** Reads and writes the page's JSON. */
    static final ObjectMapper MAPPER = JsonMapper.builder(com.fasterxml.jackson.core.JsonFactory.builder()
                    .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
                    .disable(JsonReadFeature.ALLOW_NON_NUMERIC_NUMBERS)
                    .streamReadConstraints(StreamReadConstraints.builder()
                            .maxNestingDepth(DEEPEST)
                            .maxStringLength(LARGEST)
                            .build())
                    .build())
            .build();

    static Asked in(Request request) throws Fault, IOException {
        byte[] body;
        try (InputStream in = Request.asInputStream(request)) {
            body = in.readNBytes(LARGEST + 1);
        }
        if (body.length > LARGEST) {
            throw Fault.tooLarge("This request is larger than 4 MiB.");
        }
        return of(body);
    }

    static Asked of(byte[] body) throws Fault, IOException {
        JsonNode json;
        try {
            json = MAPPER.readTree(body);
        } catch (JsonProcessingException malformed) {
            throw Fault.badRequest("The request is not JSON.");
        }
        if (!(json instanceof ObjectNode)) {
            throw Fault.badRequest("The request is not a JSON object.");
        }
        return new Asked(json);
    }

    String text(String name) throws Fault {
        return optionalText(name).orElseThrow(() -> Fault.badRequest("'" + name + "' is missing, or is no text."));
    }

    Optional<String> optionalText(String name) {
        return json.path(name).isTextual() ? Optional.of(json.path(name).textValue()) : Optional.empty();
    }

    OptionalDouble optionalFigure(String name) {
        return json.path(name).isNumber() ? OptionalDouble.of(json.path(name).doubleValue()) : OptionalDouble.empty();
    }

    double figure(String name) throws Fault {
        OptionalDouble figure = optionalFigure(name);
        if (figure.isEmpty() || !Double.isFinite(figure.getAsDouble())) {
            throw Fault.badRequest("'" + name + "' is missing, or is no number.");
        }
        return figure.getAsDouble();
    }

    Asked part(String name) throws Fault {
        if (!json.path(name).isObject()) {
            throw Fault.badRequest("'" + name + "' is missing, or is no object.");
        }
        return new Asked(json.path(name));
    }

    List<Asked> parts(String name) throws Fault {
        List<Asked> parts = new ArrayList<>();
        for (JsonNode part : json.path(name)) {
            if (!part.isObject()) {
                throw Fault.badRequest("'" + name + "' holds something else than objects.");
            }
            parts.add(new Asked(part));
        }
        return parts;
    }

    boolean has(String name) {
        return !json.path(name).isMissingNode() && !json.path(name).isNull();
    }
}
