package org.holdproof.core.log.reading;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.holdproof.core.log.LogSettings;
import org.holdproof.core.quantity.TemperatureUnit;

/** Which scale each column's figures are in: its own, or the one somebody settled for those that say none. */
final class UnitsOfColumns {
    private final Optional<TemperatureUnit> preamble;
    private final LogSettings settings;

    UnitsOfColumns(Optional<TemperatureUnit> preamble, LogSettings settings) {
        this.preamble = preamble;
        this.settings = settings;
    }

    /** @throws Refusal if the record names another scale for this very column than its heading does */
    Optional<TemperatureUnit> of(Heading heading, long line, int column) {
        Optional<TemperatureUnit> own = settings.units().entrySet().stream()
                .filter(entry -> isCalled(heading, entry))
                .map(Map.Entry::getValue)
                .findFirst();
        if (heading.unit().isPresent() && own.isPresent() && !own.equals(heading.unit())) {
            throw new Refusal(
                    line,
                    column,
                    Refusal.quote(heading.text()) + ", which says "
                            + heading.unit().get().symbol(),
                    own.get().symbol() + ", as \"units\" of the batch record says",
                    "Correct the record, or the file.");
        }
        return heading.unit().or(() -> own).or(() -> preamble).or(settings::unit);
    }

    private static boolean isCalled(Heading heading, Map.Entry<String, TemperatureUnit> entry) {
        String called = entry.getKey().strip().toLowerCase(Locale.ROOT);
        return called.equals(heading.text().toLowerCase(Locale.ROOT))
                || called.equals(heading.name().toLowerCase(Locale.ROOT));
    }

    /** @throws Refusal if every column says its own scale, and none the one somebody settled */
    void requireOneThatAgrees(List<ChannelPlan> channels, List<Heading> headings, long line) {
        boolean silent = channels.stream()
                .anyMatch(channel -> headings.get(channel.column()).unit().isEmpty());
        if (silent || channels.isEmpty() || settings.unit().isEmpty()) {
            return;
        }
        TemperatureUnit settled = settings.unit().get();
        if (channels.stream().noneMatch(channel -> channel.unit().equals(settings.unit()))) {
            throw new Refusal(
                    line,
                    channels.get(0).column() + 1,
                    "temperatures stated in "
                            + channels.get(0).unit().orElseThrow().symbol(),
                    settled.symbol() + ", as \"log.unit\", --unit or a line above the table says",
                    "Correct \"log.unit\" in the batch record, --unit, or the file.");
        }
    }
}
