package org.holdproof.core.verdict;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.core.StreamReadConstraints;
import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import com.fasterxml.jackson.core.util.Separators;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.holdproof.core.batch.BatchRecord;
import org.holdproof.core.quantity.Bounded;
import org.holdproof.core.quantity.Span;
import org.holdproof.core.rules.ThermalDeath;

/**
 * The assessment as JSON (UTF-8, {@code org/holdproof/schema/assessment.schema.json} on the class path), and a printed
 * one held against a second assessment of the same record.
 *
 * <p>The same assessment always gives the same bytes. Figures are rounded to six decimals, half to even: 60
 * microseconds where they are minutes. {@code worst}, {@code nominal}, {@code best} stand in a check only where something
 * was measured; {@code null} there, and in the record's facts, means that nothing bounds the figure. {@code limit} and
 * {@code margin} stand only where there is one. Texts are always there and may be empty. Times carry the kitchen's
 * offset.
 */
public final class AssessmentJson {
    /** What every output that a person may act on says. */
    public static final String SAFETY = "This is decision support. The local authority's code and the approved HACCP"
            + " plan govern. Food judged NOT PROVEN or NOT MET is not served on the word of this program.";

    private static final int DECIMALS = 6;
    /** Two rounded figures this close came from one computation: one step of the last decimal, and its own rounding. */
    private static final double STEP = 1.5e-6;
    /** The part of a large figure that two mathematics libraries may differ by. */
    private static final double PART = 1e-9;

    private static final int DEEPEST = 16;
    private static final JsonFactory JSON = JsonFactory.builder()
            .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
            .streamReadConstraints(
                    StreamReadConstraints.builder().maxNestingDepth(DEEPEST).build())
            .build();
    /** Members in words: they may be put better one day without a figure having changed. */
    private static final Set<String> WORDING =
            Set.of("title", "subject", "rule", "source", "how", "why", "next", "text", "safety");

    private static final Pattern LISTED_ID = Pattern.compile("(/(check|caution|integrated)s?/[0-9]+)/id");

    private AssessmentJson() {}

    /** A printed assessment that cannot be read. */
    public static final class UnreadableAssessmentException extends Exception {
        UnreadableAssessmentException(String message) {
            super(message);
        }
    }

    /**
     * The interval a check printed; an end without a bound is empty.
     *
     * @param worst the figure as far against the cook as the record allows
     * @param nominal the figure with temperature linear between readings
     * @param best the figure as far in the cook's favour as the record allows
     */
    public record PrintedInterval(OptionalDouble worst, OptionalDouble nominal, OptionalDouble best) {}

    /**
     * What one check printed.
     *
     * @param verdict in the printed words
     * @param measured empty where the check had no figures
     * @param limit empty where it had none
     */
    public record PrintedCheck(String verdict, Optional<PrintedInterval> measured, OptionalDouble limit) {}

    /**
     * What an assessment printed.
     *
     * @param verdict the batch's verdict, in the printed words
     * @param checks by their ids, in the printed order; an id met again, as with two reheats, has {@code (2)} after it
     */
    public record Figures(String verdict, Map<String, PrintedCheck> checks) {
        public Figures {
            checks = Collections.unmodifiableMap(new LinkedHashMap<>(checks));
        }
    }

    /** The assessment as indented JSON, ending with a line feed. */
    public static byte[] write(Assessment assessment) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (JsonGenerator json = JSON.createGenerator(out)) {
            DefaultIndenter indenter = new DefaultIndenter("  ", "\n");
            DefaultPrettyPrinter layout = new DefaultPrettyPrinter(Separators.createDefaultInstance()
                    .withObjectFieldValueSpacing(Separators.Spacing.AFTER)
                    .withArrayEmptySeparator("")
                    .withObjectEmptySeparator(""));
            layout.indentArraysWith(indenter);
            layout.indentObjectsWith(indenter);
            json.setPrettyPrinter(layout);
            new Writer(json, assessment.batch().kitchen().zone()).assessment(assessment);
            json.writeRaw('\n');
        } catch (IOException e) {
            throw new UncheckedIOException("writing to memory failed", e);
        }
        return out.toByteArray();
    }

    /**
     * Reads the verdicts and figures of a printed assessment.
     *
     * @throws UnreadableAssessmentException if it is not an assessment
     */
    public static Figures read(byte[] printed) throws UnreadableAssessmentException {
        Map<String, Scalar> scalars = scalars(printed);
        Map<String, PrintedCheck> checks = new LinkedHashMap<>();
        for (int i = 0; scalars.containsKey("/checks/" + i + "/id"); i++) {
            String at = "/checks/" + i + "/";
            Optional<PrintedInterval> measured = scalars.containsKey(at + "worst")
                    ? Optional.of(new PrintedInterval(
                            figure(scalars, at + "worst"),
                            figure(scalars, at + "nominal"),
                            figure(scalars, at + "best")))
                    : Optional.empty();
            OptionalDouble limit =
                    scalars.containsKey(at + "limit") ? figure(scalars, at + "limit") : OptionalDouble.empty();
            PrintedCheck check = new PrintedCheck(text(scalars, at + "verdict"), measured, limit);
            String id = text(scalars, at + "id");
            String name = id;
            for (int time = 2; checks.containsKey(name); time++) {
                name = id + " (" + time + ")";
            }
            checks.put(name, check);
        }
        return new Figures(text(scalars, "/verdict"), checks);
    }

    /**
     * Holds a printed assessment against one computed again from the same record: verdicts, figures, limits, times,
     * ids, the batch, the authority and the tables' edition. Wording is left out, and figures may differ by rounding.
     *
     * @return a sentence for every difference, none where they agree
     */
    public static List<String> differences(byte[] printed, Assessment again) {
        Map<String, Scalar> before;
        Map<String, Scalar> after;
        try {
            before = byId(scalars(printed));
        } catch (UnreadableAssessmentException e) {
            return List.of(e.getMessage());
        }
        try {
            after = byId(scalars(write(again)));
        } catch (UnreadableAssessmentException e) {
            throw new IllegalStateException("an assessment that was just written cannot be read", e);
        }
        Set<String> places = new LinkedHashSet<>(before.keySet());
        places.addAll(after.keySet());
        List<String> differences = new ArrayList<>();
        for (String place : places) {
            if (!WORDING.contains(place.substring(place.lastIndexOf(' ') + 1))) {
                Optional<Scalar> was = Optional.ofNullable(before.get(place));
                Optional<Scalar> is = Optional.ofNullable(after.get(place));
                if (!(was.isPresent() && is.isPresent() && was.get().agreesWith(is.get()))) {
                    differences.add(
                            place + ": printed " + was.map(Scalar::words).orElse("nothing") + ", computed again "
                                    + is.map(Scalar::words).orElse("nothing"));
                }
            }
        }
        return differences;
    }

    /** Names every value the way a person would: {@code check cooling.2 worst}, whatever the check's place in the list. */
    private static Map<String, Scalar> byId(Map<String, Scalar> scalars) {
        Map<String, String> ids = new HashMap<>();
        Map<String, Integer> times = new HashMap<>();
        for (Map.Entry<String, Scalar> entry : scalars.entrySet()) {
            Matcher matcher = LISTED_ID.matcher(entry.getKey());
            if (matcher.matches()) {
                String id = matcher.group(2) + " " + entry.getValue().value();
                int time = times.merge(id, 1, Integer::sum);
                ids.put(matcher.group(1), time == 1 ? id : id + " (" + time + ")");
            }
        }
        Map<String, Scalar> named = new LinkedHashMap<>();
        for (Map.Entry<String, Scalar> entry : scalars.entrySet()) {
            int member = entry.getKey().lastIndexOf('/');
            String parent = entry.getKey().substring(0, member);
            String name = ids.getOrDefault(parent, parent.replace('/', ' ')) + " "
                    + entry.getKey().substring(member + 1);
            named.put(name.strip(), entry.getValue());
        }
        return named;
    }

    /** A value as printed. */
    private record Scalar(boolean isText, String value) {
        boolean agreesWith(Scalar other) {
            if (isText || other.isText || value.equals("null") || other.value.equals("null")) {
                return equals(other);
            }
            double figure = Double.parseDouble(value);
            double otherFigure = Double.parseDouble(other.value);
            return Math.abs(figure - otherFigure) <= STEP + PART * Math.abs(otherFigure);
        }

        String words() {
            return isText ? "'" + value + "'" : value.equals("null") ? "no bound" : value;
        }
    }

    private static OptionalDouble figure(Map<String, Scalar> scalars, String pointer)
            throws UnreadableAssessmentException {
        Scalar scalar = scalars.get(pointer);
        if (scalar == null || scalar.isText()) {
            throw new UnreadableAssessmentException("the assessment has no figure at " + pointer);
        }
        if (scalar.value().equals("null")) {
            return OptionalDouble.empty();
        }
        double figure = Double.parseDouble(scalar.value());
        if (!Double.isFinite(figure)) {
            throw new UnreadableAssessmentException("the assessment has a figure too large at " + pointer);
        }
        return OptionalDouble.of(figure);
    }

    private static String text(Map<String, Scalar> scalars, String pointer) throws UnreadableAssessmentException {
        Scalar scalar = scalars.get(pointer);
        if (scalar == null || !scalar.isText()) {
            throw new UnreadableAssessmentException("the assessment has no text at " + pointer);
        }
        return scalar.value();
    }

    /** Every text, number and null by its JSON pointer, in the order of the file. */
    private static Map<String, Scalar> scalars(byte[] printed) throws UnreadableAssessmentException {
        Map<String, Scalar> scalars = new LinkedHashMap<>();
        try (JsonParser parser = JSON.createParser(printed)) {
            if (parser.nextToken() != JsonToken.START_OBJECT) {
                throw new UnreadableAssessmentException("the assessment is not a JSON object");
            }
            collect(parser, "", scalars);
            if (parser.nextToken() != null) {
                throw new UnreadableAssessmentException("the assessment goes on after its end");
            }
        } catch (JsonProcessingException e) {
            throw new UnreadableAssessmentException("the assessment is not JSON: " + e.getOriginalMessage());
        } catch (IOException e) {
            throw new UnreadableAssessmentException("the assessment is not UTF-8 text");
        }
        return scalars;
    }

    private static void collect(JsonParser parser, String pointer, Map<String, Scalar> scalars)
            throws IOException, UnreadableAssessmentException {
        JsonToken token = parser.currentToken();
        switch (token) {
            case START_OBJECT -> {
                while (parser.nextToken() != JsonToken.END_OBJECT) {
                    String name = parser.currentName();
                    parser.nextToken();
                    collect(parser, pointer + "/" + name.replace("~", "~0").replace("/", "~1"), scalars);
                }
            }
            case START_ARRAY -> {
                for (int i = 0; parser.nextToken() != JsonToken.END_ARRAY; i++) {
                    collect(parser, pointer + "/" + i, scalars);
                }
            }
            case VALUE_STRING -> scalars.put(pointer, new Scalar(true, parser.getText()));
            case VALUE_NUMBER_INT, VALUE_NUMBER_FLOAT, VALUE_NULL ->
                scalars.put(pointer, new Scalar(false, parser.getText()));
            default ->
                throw new UnreadableAssessmentException("the assessment has " + parser.getText() + " at " + pointer
                        + ", where a text or figure belongs");
        }
    }

    /** Writes the parts of an assessment, each in its fixed order. */
    private static final class Writer {
        private final JsonGenerator json;
        private final ZoneId zone;

        Writer(JsonGenerator json, ZoneId zone) {
            this.json = json;
            this.zone = zone;
        }

        void assessment(Assessment assessment) throws IOException {
            json.writeStartObject();
            text("verdict", assessment.verdict().words());
            json.writeObjectFieldStart("batch");
            batch(assessment.batch());
            json.writeEndObject();
            json.writeObjectFieldStart("authority");
            text("id", assessment.authority().id());
            text("title", assessment.authority().title());
            json.writeEndObject();
            text("tables", assessment.tablesEdition());
            span(assessment.span());
            json.writeArrayFieldStart("checks");
            for (Check check : assessment.checks()) {
                check(check);
            }
            json.writeEndArray();
            json.writeArrayFieldStart("integrated");
            for (LethalityMargin integrated : assessment.integrated()) {
                integrated(integrated);
            }
            json.writeEndArray();
            json.writeArrayFieldStart("cautions");
            for (Caution caution : assessment.cautions()) {
                json.writeStartObject();
                text("id", caution.id());
                text("text", caution.text());
                json.writeEndObject();
            }
            json.writeEndArray();
            json.writeArrayFieldStart("notJudged");
            for (NotJudged question : assessment.notJudged()) {
                json.writeStartObject();
                text("subject", question.subject());
                text("why", question.why());
                json.writeEndObject();
            }
            json.writeEndArray();
            json.writeObjectFieldStart("record");
            record(assessment.record());
            json.writeEndObject();
            text("safety", SAFETY);
            json.writeEndObject();
        }

        private void batch(BatchRecord batch) throws IOException {
            text("id", batch.batch());
            text("kitchen", batch.kitchen().name());
            text("place", batch.kitchen().place());
            text("timeZone", zone.getId());
            text("product", batch.product().name());
            text("species", batch.product().species().title());
            text("cut", batch.product().cut());
            text("form", batch.product().form().title());
        }

        private void check(Check check) throws IOException {
            json.writeStartObject();
            text("id", check.id());
            text("title", check.title());
            text("rule", check.rule());
            text("source", check.citation().map(citation -> citation.text()).orElse(""));
            text("how", check.citation().map(citation -> citation.how().title()).orElse(""));
            text("verdict", check.verdict().words());
            if (check.measured().isPresent()) {
                interval(check.measured().get());
            }
            if (check.limit().isPresent()) {
                figure("limit", check.limit().getAsDouble());
            }
            text("comparison", check.comparison().words());
            text("unit", check.unit().orElse(""));
            if (check.margin().isPresent()) {
                figure("margin", check.margin().getAsDouble());
            }
            text("why", check.why());
            text("next", check.next().orElse(""));
            text("channel", check.channel().orElse(""));
            if (check.window().isPresent()) {
                span(check.window().get());
            }
            json.writeEndObject();
        }

        private void integrated(LethalityMargin integrated) throws IOException {
            ThermalDeath kinetics = integrated.kinetics();
            json.writeStartObject();
            text("id", kinetics.id());
            text("title", kinetics.title());
            text("organism", kinetics.organism());
            figure("dMinutes", kinetics.dMinutes());
            figure("referenceCelsius", kinetics.referenceCelsius());
            figure("zCelsius", kinetics.zCelsius());
            text("source", kinetics.citation().text());
            text("how", kinetics.citation().how().title());
            interval(integrated.log10());
            text("unit", "log10");
            text("channel", integrated.channel());
            json.writeEndObject();
        }

        private void interval(Bounded figures) throws IOException {
            figure("worst", figures.worst());
            figure("nominal", figures.nominal());
            figure("best", figures.best());
        }

        private void record(RecordFacts facts) throws IOException {
            json.writeNumberField("rows", facts.rows());
            figure("medianMinutes", facts.medianMinutes());
            figure("gapLimitMinutes", facts.gapLimitMinutes());
            figure("offsetCelsius", facts.offsetCelsius());
            figure("toleranceCelsius", facts.toleranceCelsius());
            json.writeArrayFieldStart("gaps");
            for (RecordFacts.Gap gap : facts.gaps()) {
                json.writeStartObject();
                text("channel", gap.channel());
                span(gap.span());
                figure("minutes", gap.span().minutes());
                json.writeEndObject();
            }
            json.writeEndArray();
        }

        private void span(Span span) throws IOException {
            text("from", time(span.fromMillis()));
            text("to", time(span.toMillis()));
        }

        private String time(long epochMillis) {
            return DateTimeFormatter.ISO_OFFSET_DATE_TIME.format(
                    Instant.ofEpochMilli(epochMillis).atZone(zone).toOffsetDateTime());
        }

        /** Half of a surrogate pair, as a damaged log may name a column with, has no place in UTF-8. */
        private void text(String name, String value) throws IOException {
            json.writeStringField(name, new String(value.getBytes(StandardCharsets.UTF_8), StandardCharsets.UTF_8));
        }

        /** Rounded through {@link BigDecimal}, whose digits do not change between releases of Java. */
        private void figure(String name, double value) throws IOException {
            json.writeFieldName(name);
            if (!Double.isFinite(value)) {
                json.writeNull();
                return;
            }
            BigDecimal rounded = new BigDecimal(value).setScale(DECIMALS, RoundingMode.HALF_EVEN);
            json.writeNumber(
                    rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString());
        }
    }
}
