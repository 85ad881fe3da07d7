package org.holdproof.core.course;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import org.holdproof.core.batch.ColumnRole;
import org.holdproof.core.batch.Product;
import org.holdproof.core.batch.Stage;
import org.holdproof.core.log.Channel;
import org.holdproof.core.log.ProbeLog;
import org.holdproof.core.log.Trace;

/**
 * A batch record begun from logs: what they show is filled in as a proposal, what they cannot show stays a question. A text
 * that begins with a question mark and a blank is refused by the reader of records until it is answered.
 */
public final class DraftRecord {
    private static final Pattern WORD = Pattern.compile("\\p{Lu}?\\p{Ll}+|\\p{Lu}+");
    private static final Set<String> CORE =
            Set.of("core", "kern", "meat", "food", "product", "centre", "center", "probe");
    private static final Set<String> BATH = Set.of("bath", "water", "wasser", "bad", "pot", "tank");
    private static final Set<String> AIR =
            Set.of("air", "smoker", "pit", "oven", "ambient", "chamber", "grill", "fridge", "chiller", "luft", "raum");

    private final List<ProbeLog> logs;
    private final boolean local;
    private final ZoneId zone;
    private final List<StageProposal> stages;

    private DraftRecord(List<ProbeLog> logs, boolean local, ZoneId zone, List<StageProposal> stages) {
        this.logs = List.copyOf(logs);
        this.local = local;
        this.zone = zone;
        this.stages = List.copyOf(stages);
    }

    /**
     * Begins a record.
     *
     * @param logs the logs as read; at least one
     * @param local whether their clocks are local ones without a zone, read as if they were UTC
     */
    public static DraftRecord of(List<ProbeLog> logs, boolean local) {
        Optional<Trace> core = first(logs, ColumnRole.CORE);
        List<StageProposal> stages = core.isEmpty()
                ? List.of()
                : StageProposals.of(core.get(), first(logs, ColumnRole.BATH), first(logs, ColumnRole.AIR));
        return new DraftRecord(logs, local, ZoneOffset.UTC, stages);
    }

    private static Optional<Trace> first(List<ProbeLog> logs, ColumnRole role) {
        List<Trace> found = new ArrayList<>();
        for (ProbeLog log : logs) {
            for (int channel = 0; channel < log.channels().size(); channel++) {
                if (role(log.channels().get(channel)).equals(Optional.of(role))) {
                    found.add(log.trace(channel));
                }
            }
        }
        return found.stream().filter(trace -> !trace.isEmpty()).findFirst();
    }

    /** What a column seems to measure, by the words of its heading. */
    public static Optional<ColumnRole> role(Channel channel) {
        Map<ColumnRole, Set<String>> vocabulary = new EnumMap<>(ColumnRole.class);
        vocabulary.put(ColumnRole.BATH, BATH);
        vocabulary.put(ColumnRole.AIR, AIR);
        vocabulary.put(ColumnRole.CORE, CORE);
        for (Map.Entry<ColumnRole, Set<String>> role : vocabulary.entrySet()) {
            boolean named = WORD.matcher(channel.name()).results().anyMatch(word -> role.getValue()
                    .contains(word.group().toLowerCase(Locale.ROOT)));
            if (named) {
                return Optional.of(role.getKey());
            }
        }
        return Optional.empty();
    }

    /** The stages the curves suggest. */
    public List<StageProposal> stages() {
        return stages;
    }

    /** An instant as the record writes it. */
    public String time(long millis) {
        String clock = DateTimeFormatter.ofPattern("yyyy-MM-dd'T'HH:mm", Locale.ROOT)
                .format(Instant.ofEpochMilli(millis).atZone(zone));
        return local ? clock : clock + "Z";
    }

    /** The record as JSON, with every question in it. */
    public byte[] json() {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (JsonGenerator out = new JsonFactory().createGenerator(bytes).useDefaultPrettyPrinter()) {
            out.writeStartObject();
            out.writeStringField("batch", "? the batch's id");
            out.writeStringField("authority", "? the profile to judge by; holdproof tables lists them");
            out.writeObjectFieldStart("kitchen");
            out.writeStringField("name", "? the kitchen's name");
            out.writeStringField("timeZone", "? the kitchen's time zone, such as Europe/Dublin");
            out.writeEndObject();
            product(out);
            if (logs.size() == 1) {
                instrument(out);
                columns(out, logs.get(0));
            } else {
                out.writeArrayFieldStart("logs");
                for (ProbeLog log : logs) {
                    out.writeStartObject();
                    out.writeStringField("file", log.fileName());
                    instrument(out);
                    columns(out, log);
                    out.writeObjectFieldStart("clock");
                    out.writeStringField(
                            "ahead", "? how far this logger's clock was ahead of the kitchen's, such as 0 s");
                    out.writeStringField("within", "? how sure that is, such as 1 min");
                    out.writeEndObject();
                    out.writeEndObject();
                }
                out.writeEndArray();
            }
            stages(out);
            out.writeObjectFieldStart("end");
            out.writeStringField("how", "? served, discarded, sold on or in store");
            out.writeStringField("at", "? when, such as " + time(lastMillis()));
            out.writeEndObject();
            out.writeObjectFieldStart("roles");
            out.writeStringField("operator", "? who ran the cook");
            out.writeEndObject();
            out.writeEndObject();
        } catch (IOException e) {
            throw new IllegalStateException("writing to memory failed", e);
        }
        return bytes.toByteArray();
    }

    private long lastMillis() {
        return logs.stream().mapToLong(log -> log.millis(log.rows() - 1)).max().orElse(0);
    }

    private static void product(JsonGenerator out) throws IOException {
        out.writeObjectFieldStart("product");
        out.writeStringField("name", "? what was cooked");
        out.writeStringField("species", "? " + words(Product.Species.values()));
        out.writeStringField("form", "? " + words(Product.Form.values()));
        out.writeStringField("shape", "? " + words(Product.Shape.values()));
        out.writeStringField("thickness", "? the thinnest way through the middle, such as 65 mm");
        out.writeEndObject();
    }

    private static String words(Enum<?>[] constants) {
        List<String> words = new ArrayList<>();
        for (Enum<?> constant : constants) {
            words.add(constant.name().toLowerCase(Locale.ROOT).replace('_', ' '));
        }
        return String.join(", ", words);
    }

    private static void instrument(JsonGenerator out) throws IOException {
        out.writeObjectFieldStart("instrument");
        out.writeStringField("id", "? the logger's name or serial number");
        out.writeStringField("tolerance", "? how far it may read from the truth, such as 0.5 °C");
        out.writeEndObject();
    }

    private static void columns(JsonGenerator out, ProbeLog log) throws IOException {
        out.writeObjectFieldStart("columns");
        List<String> open = log.channels().stream()
                .filter(channel -> role(channel).isEmpty())
                .map(Channel::name)
                .toList();
        for (ColumnRole role : ColumnRole.values()) {
            List<String> named = log.channels().stream()
                    .filter(channel -> role(channel).equals(Optional.of(role)))
                    .map(Channel::name)
                    .toList();
            boolean ask = role == ColumnRole.CORE && !open.isEmpty();
            if (named.isEmpty() && !ask) {
                continue;
            }
            out.writeArrayFieldStart(role.title());
            for (String heading : named) {
                out.writeString(heading);
            }
            if (ask) {
                out.writeString("? what each of these measured: " + String.join(", ", open));
            }
            out.writeEndArray();
        }
        out.writeEndObject();
    }

    private void stages(JsonGenerator out) throws IOException {
        out.writeArrayFieldStart("stages");
        for (StageProposal stage : stages) {
            out.writeStartObject();
            out.writeStringField("stage", stage.kind().title());
            if (stage.kind() == Stage.Kind.BAG) {
                out.writeStringField("at", "? when it was bagged, perhaps " + time(stage.fromMillis()));
            } else {
                out.writeStringField("from", asked(stage, stage.fromMillis()));
                out.writeStringField("to", asked(stage, stage.toMillis()));
                if (stage.setPointCelsius().isPresent()) {
                    out.writeStringField(
                            "setPoint", "? perhaps " + stage.setPointCelsius().getAsDouble() + " °C");
                }
            }
            out.writeEndObject();
        }
        if (stages.isEmpty()) {
            out.writeString("? the stages the food went through, with their times");
        }
        out.writeEndArray();
    }

    /** A proposal is never used unconfirmed: it stands behind a question mark. */
    private String asked(StageProposal stage, long millis) {
        return "? " + stage.sureness().title() + ": " + time(millis);
    }
}
