package org.holdproof.core.log.reading;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.Set;

/** Finds the column that says which probe each row is of, in a file that lists the readings of several one below the other. */
final class LabelColumn {
    private static final int MOST_LABELS = 32;
    /** From so many changes a row on, words under any heading are labels. */
    private static final double CHANGES = 0.3;

    private static final Set<String> NAMES = Set.of(
            "sensor",
            "sensors",
            "probe",
            "channel",
            "chan",
            "ch",
            "input",
            "port",
            "device",
            "logger",
            "node",
            "serial",
            "id",
            "name",
            "mac",
            "address",
            "label",
            "tag",
            "position",
            "location",
            "point",
            "place",
            "fühler",
            "kanal",
            "messstelle",
            "sonde",
            "capteur",
            "sensore",
            "sonda",
            "canal");

    private LabelColumn() {}

    static OptionalInt find(
            List<Heading> headings, List<ColumnSample> samples, ClockPlan clock, List<ChannelPlan> channels) {
        for (int column = 0; column < headings.size(); column++) {
            int at = column;
            if (at == clock.column()
                    || at == clock.timeColumn()
                    || channels.stream().anyMatch(channel -> channel.column() == at)) {
                continue;
            }
            ColumnSample sample = samples.get(at);
            Heading heading = headings.get(at);
            boolean named = heading.unit().isEmpty()
                    && heading.words().stream().anyMatch(NAMES::contains)
                    && !sample.isCounter();
            boolean alternates = sample.isWords() && sample.changes() >= CHANGES && !heading.isOther();
            if (sample.distinct() <= MOST_LABELS
                    && sample.repeats()
                    && (named || (alternates && sample.distinct() > 1))) {
                return OptionalInt.of(at);
            }
        }
        return OptionalInt.empty();
    }

    /**
     * The text of each label's rows, with the lines above the readings and every other line left blank, so that lines keep
     * their numbers.
     *
     * @param lines the lines of the file
     * @throws Refusal if there are more labels than a file of probes has, or other headings follow
     */
    static Map<String, String> apart(List<String> lines, Layout layout) {
        int column = layout.labels().orElseThrow();
        Map<String, List<Integer>> rows = new LinkedHashMap<>();
        for (int i = (int) layout.firstLine() - 1; i < lines.size(); i++) {
            List<SampleRow> cells = SampleRow.rows(lines.get(i), layout.separator());
            if (cells.isEmpty()) {
                continue;
            }
            if (SectionHeading.isOne(lines.get(i)) && !cells.get(0).cells().equals(layout.headingCells())) {
                throw new Refusal(
                        i + 1L,
                        0,
                        "other headings in a file that lists several probes one below the other",
                        "one row of headings",
                        "Hand the parts in as files of their own, each with its headings.");
            }
            String label = cells.get(0).cell(column);
            if (!label.isEmpty() && cells.get(0).width() > 1) {
                rows.computeIfAbsent(label, any -> new ArrayList<>()).add(i);
            }
        }
        if (rows.size() > MOST_LABELS) {
            throw new Refusal(
                    layout.firstLine(),
                    column + 1,
                    rows.size() + " different labels in one column",
                    "at most " + MOST_LABELS + " probes",
                    "Remove the column if it does not say which probe a row is of; otherwise export the probes side by"
                            + " side.");
        }
        Map<String, String> texts = new LinkedHashMap<>();
        rows.forEach((label, places) -> texts.put(label, text(lines, layout, places)));
        return texts;
    }

    private static String text(List<String> lines, Layout layout, List<Integer> places) {
        StringBuilder text = new StringBuilder();
        int next = 0;
        for (int i = 0; i < lines.size(); i++) {
            boolean above = i < layout.firstLine() - 1;
            boolean own = next < places.size() && places.get(next) == i;
            next += own ? 1 : 0;
            text.append(above || own ? lines.get(i) : "").append('\n');
        }
        return text.toString();
    }

    /** The name of a labelled probe: its label, and the column's name where there are several columns. */
    static String name(String label, String column, int columns) {
        return columns == 1 ? label : label + " " + column;
    }
}
