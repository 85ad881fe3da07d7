package org.holdproof.core.log.reading;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import org.holdproof.core.log.LogSettings;
import org.holdproof.core.quantity.TemperatureUnit;

/**
 * What each column of a log is.
 *
 * <p>A column is a temperature if its heading states °C or °F or says "temperature", or if its cells state the unit.
 * Where a line above the table, or the settings, settle the unit for all of it, a column of figures under any other
 * heading is one as well, unless the heading means something else (humidity, battery, a count). A heading that names a
 * probe or its place over figures without a unit is an error, not passed over. Set points and everything else are left
 * out.
 *
 * @param separator the character between the cells
 * @param firstLine the line of the first row of readings
 * @param headingCells the cells of the headings as they stand, or none
 * @param clock what tells the time
 * @param channels the temperature columns, from left to right
 * @param figures the columns that can hold figures
 * @param labels the column that says which probe a row is of, where rows of several stand one below the other
 */
record Layout(
        char separator,
        long firstLine,
        List<String> headingCells,
        ClockPlan clock,
        List<ChannelPlan> channels,
        Set<Integer> figures,
        OptionalInt labels) {
    /** The most temperature columns that are read. */
    static final int MOST_CHANNELS = 32;

    private static final int WIDEST = 4_096;

    Layout {
        headingCells = List.copyOf(headingCells);
        channels = List.copyOf(channels);
        figures = Set.copyOf(figures);
    }

    /** Whether figures can stand in a column. */
    boolean canHoldFigures(int column) {
        return figures.contains(column);
    }

    /**
     * Works out the layout from the start of a file.
     *
     * @throws Refusal if it has no table, no clock, no temperatures, or leaves open what must not be guessed
     */
    static Layout of(String head, LogSettings settings) {
        Table table = Table.find(head);
        Preamble preamble = Preamble.of(table.preamble());
        long line = table.headingLine() > 0 ? table.headingLine() : table.firstLine();
        int width = table.width();
        if (width > WIDEST) {
            throw new Refusal(line, 0, width + " columns", "at most " + WIDEST, "Export the temperatures only.");
        }
        List<Heading> headings = new ArrayList<>();
        List<ColumnSample> samples = new ArrayList<>();
        for (int column = 0; column < width; column++) {
            headings.add(Heading.of(
                    column < table.headings().size() ? table.headings().get(column) : "", table.headings()));
            samples.add(new ColumnSample(table.rows(), column));
        }
        ClockPlan clock = new ClockFinder(
                        headings,
                        samples,
                        line,
                        preamble.zone(),
                        settings.start().isPresent())
                .find();
        requireSameUnit(preamble.unit(), settings.unit(), line, 0);
        UnitsOfColumns units = new UnitsOfColumns(preamble.unit(), settings);
        List<ChannelPlan> channels = new ArrayList<>();
        Set<Integer> figures = new HashSet<>();
        for (int column = 0; column < width; column++) {
            if (column == clock.column() || column == clock.timeColumn()) {
                continue;
            }
            Heading heading = headings.get(column);
            ColumnSample sample = samples.get(column);
            requireSameUnit(heading.unit(), preamble.unit(), line, column + 1);
            if (sample.holdsFigures()) {
                figures.add(column);
            }
            Optional<TemperatureUnit> unit = units.of(heading, line, column + 1);
            if (isTemperature(heading, sample, unit.isPresent(), table.headingLine() > 0)) {
                requireKnownScale(heading, line, column + 1);
                figures.add(column);
                channels.add(new ChannelPlan(heading.name(), heading.text(), column, unit));
            }
        }
        units.requireOneThatAgrees(channels, headings, line);
        requireChannels(channels, headings, samples, clock, line);
        List<ChannelPlan> named = withNames(channels);
        return new Layout(
                table.separator(),
                table.firstLine(),
                table.headingCells(),
                clock,
                named,
                figures,
                LabelColumn.find(headings, samples, clock, named));
    }

    private static boolean isTemperature(
            Heading heading, ColumnSample sample, boolean unitSettled, boolean hasHeadings) {
        if (heading.isTemperature() || sample.hasUnits()) {
            return true;
        }
        if (!hasHeadings) {
            return unitSettled && sample.isFigures() && !sample.isCounter();
        }
        if (heading.isOther() || heading.isClock()) {
            return false;
        }
        if (heading.isPlace() && unitSettled && sample.isEmpty()) {
            return true;
        }
        boolean figures = sample.isFigures() && !sample.isCounter();
        // a probe's place without a unit is no reason to pass over the column: the reader asks for the unit
        return figures && (unitSettled || heading.isPlace());
    }

    private static void requireKnownScale(Heading heading, long line, int column) {
        Optional<String> scale = heading.otherScale();
        if (scale.isPresent()) {
            throw new Refusal(
                    line,
                    column,
                    Refusal.quote(heading.text()) + ", a temperature in " + scale.get(),
                    "°C or °F",
                    "Export the log in °C or °F.");
        }
    }

    private static void requireSameUnit(
            Optional<TemperatureUnit> stated, Optional<TemperatureUnit> settled, long line, int column) {
        if (stated.isPresent() && settled.isPresent() && !stated.equals(settled)) {
            throw new Refusal(
                    line,
                    column,
                    "temperatures stated in " + stated.get().symbol(),
                    settled.get().symbol() + ", as \"log.unit\", --unit or a line above the table says",
                    "Correct \"log.unit\" in the batch record, --unit, or the file.");
        }
    }

    private static void requireChannels(
            List<ChannelPlan> channels,
            List<Heading> headings,
            List<ColumnSample> samples,
            ClockPlan clock,
            long line) {
        if (channels.size() > MOST_CHANNELS) {
            throw new Refusal(
                    line,
                    channels.get(MOST_CHANNELS).column() + 1,
                    channels.size() + " temperature columns",
                    "at most " + MOST_CHANNELS,
                    "Leave out the columns that do not belong to this batch.");
        }
        boolean noHeadings =
                headings.stream().allMatch(heading -> heading.text().isEmpty());
        if (noHeadings
                && channels.size() > 1
                && channels.stream().anyMatch(c -> !samples.get(c.column()).hasUnits())) {
            throw new Refusal(
                    line,
                    0,
                    "several columns of figures without headings",
                    "a row of headings that says which are temperatures",
                    "Add a first row such as \"time,core °C,bath °C\".");
        }
        if (!channels.isEmpty()) {
            return;
        }
        for (int column = 0; column < headings.size(); column++) {
            boolean open = column != clock.column()
                    && column != clock.timeColumn()
                    && samples.get(column).isFigures()
                    && !samples.get(column).isCounter();
            if (open && (noHeadings || !headings.get(column).isOther())) {
                throw noUnit(
                        line,
                        column + 1,
                        noHeadings
                                ? "figures"
                                : Refusal.quote(headings.get(column).text()));
            }
        }
        throw new Refusal(
                line,
                0,
                "no temperature column",
                "at least one column of temperatures",
                "Export with the probe's readings, under a heading such as \"core °C\".");
    }

    /** The refusal of a temperature column whose unit nobody settled. */
    static Refusal noUnit(long line, int column, String what) {
        return Refusal.question(
                Refusal.Question.UNIT,
                line,
                column,
                what + " without a temperature unit",
                "°C or °F in the heading, in the cells or in a line above the table",
                "Say the unit: \"log.unit\" in the batch record, or --unit C or F; or add it to the heading.");
    }

    /**
     * Gives every channel a name of its own: the heading; the scale besides, where two columns differ in it only; the
     * column's number besides, where nothing else tells two apart.
     */
    private static List<ChannelPlan> withNames(List<ChannelPlan> channels) {
        Map<String, List<ChannelPlan>> alike = new HashMap<>();
        for (ChannelPlan channel : channels) {
            alike.computeIfAbsent(channel.name().toLowerCase(Locale.ROOT), any -> new ArrayList<>())
                    .add(channel);
        }
        List<ChannelPlan> named = new ArrayList<>();
        Set<String> taken = new HashSet<>();
        for (ChannelPlan channel : channels) {
            List<ChannelPlan> same = alike.getOrDefault(channel.name().toLowerCase(Locale.ROOT), List.of());
            String number = "column " + (channel.column() + 1);
            String name = channel.name();
            if (name.isEmpty()) {
                name = number;
            } else if (isPair(same)) {
                name += channel.equals(same.get(0))
                        ? ""
                        : " (" + channel.unit().orElseThrow().symbol() + ")";
            } else if (same.size() > 1) {
                name += " (" + number + ")";
            }
            if (!taken.add(name.toLowerCase(Locale.ROOT))) {
                name += " (" + number + ")";
                taken.add(name.toLowerCase(Locale.ROOT));
            }
            named.add(new ChannelPlan(name, channel.heading(), channel.column(), channel.unit()));
        }
        return named;
    }

    /** Whether two columns are one probe in both scales. */
    private static boolean isPair(List<ChannelPlan> same) {
        return same.size() == 2
                && same.get(0).unit().isPresent()
                && same.get(1).unit().isPresent()
                && !same.get(0).unit().equals(same.get(1).unit());
    }

    /** The places among the channels of the columns that show one probe in both scales, two and two. */
    List<int[]> pairs() {
        List<int[]> pairs = new ArrayList<>();
        for (int i = 0; i < channels.size(); i++) {
            for (int j = i + 1; j < channels.size(); j++) {
                ChannelPlan other = channels.get(j);
                if (other.unit().isPresent()
                        && other.name()
                                .equalsIgnoreCase(channels.get(i).name() + " ("
                                        + other.unit().get().symbol() + ")")) {
                    pairs.add(new int[] {i, j});
                }
            }
        }
        return pairs;
    }
}
