package org.holdproof.report.layout;

import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import org.holdproof.core.batch.Instrument;
import org.holdproof.core.batch.Instrument.InstrumentCheck;
import org.holdproof.report.draw.Lettering;

/** The instrument and its last check. */
final class Thermometer {
    private static final Lettering TEXT = PageLettering.CELL;
    private static final DateTimeFormatter DATE = DateTimeFormatter.ofPattern("d MMM yyyy", Locale.ENGLISH);

    private Thermometer() {}

    static void lay(WordedReport matter, Flow flow) {
        Instrument instrument = matter.assessment().batch().instrument();
        flow.section("Instrument", 70);
        Table table =
                new Table(List.of(Table.Column.of("", 130), Table.Column.of("", flow.width() - 130 - Table.GUTTER)));
        table.textRow(flow, TEXT, List.of("Thermometer", instrument.id()));
        table.textRow(
                flow,
                TEXT,
                List.of("Its tolerance", "± " + matter.degrees().difference(instrument.toleranceCelsius())));
        if (matter.assessment().authority().toleranceCelsius().isPresent()) {
            table.textRow(
                    flow,
                    TEXT,
                    List.of(
                            "Tolerance the authority asks",
                            "± "
                                    + matter.degrees()
                                            .difference(matter.assessment()
                                                    .authority()
                                                    .toleranceCelsius()
                                                    .getAsDouble())));
        }
        table.textRow(
                flow,
                TEXT,
                List.of(
                        "Last check",
                        instrument
                                .lastCheck()
                                .map(check -> checkWords(matter, check))
                                .orElse("The batch record names none.")));
        table.textRow(
                flow,
                TEXT,
                List.of(
                        "To be checked every",
                        instrument.checkEveryDays().isPresent()
                                ? Figures.trimmed(instrument.checkEveryDays().getAsDouble(), 1) + " days"
                                : "The batch record does not say."));
        table.textRow(
                flow,
                TEXT,
                List.of(
                        "Added to every reading",
                        matter.degrees().difference(matter.assessment().record().offsetCelsius())));
        table.lay(flow);
    }

    private static String checkWords(WordedReport matter, InstrumentCheck check) {
        StringBuilder words = new StringBuilder(DATE.format(check.date()))
                .append(", ")
                .append(BatchWords.words(check.method()))
                .append(": read ")
                .append(matter.degrees().text(check.readingCelsius(), 2));
        check.referenceCelsius().ifPresent(reference -> words.append(" beside a reference thermometer at ")
                .append(matter.degrees().text(reference, 2)));
        check.altitudeMetres().ifPresent(altitude -> words.append(" at ")
                .append(Figures.trimmed(altitude, 0))
                .append(" m above sea level"));
        return words.toString();
    }
}
