package org.holdproof.core.course;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.holdproof.core.batch.BatchRecord;
import org.holdproof.core.batch.ColumnRole;
import org.holdproof.core.batch.ColumnUse;
import org.holdproof.core.batch.LogSource;
import org.holdproof.core.log.LogContents;
import org.holdproof.core.log.LogFault;
import org.holdproof.core.log.ProbeLog;
import org.holdproof.core.log.Trace;
import org.holdproof.core.quantity.TemperatureUnit;

/**
 * All logs of a cook on the kitchen's clock: what each probe of the record read, from whichever instrument, for as long
 * as it measured there. Nothing is filled in between two logs or two stretches.
 */
public final class CookLogs {
    private final BatchRecord batch;
    private final List<ProbeLog> logs;
    private final List<Long> shiftMillis;
    private final Map<Probe, List<Reading[]>> readings = new LinkedHashMap<>();

    /** A place that was measured. */
    private record Probe(ColumnRole role, String name) {}

    private record Reading(long millis, double celsius, int log, int line) {}

    private CookLogs(BatchRecord batch, List<ProbeLog> logs, List<Long> shiftMillis) {
        this.batch = batch;
        this.logs = List.copyOf(logs);
        this.shiftMillis = List.copyOf(shiftMillis);
    }

    /**
     * The logs of a batch.
     *
     * @param logs one for each of {@link BatchRecord#logs()}, in that order
     * @throws ColumnMissingException if the record names a column its log does not have
     * @throws IllegalArgumentException if the logs are not as many as the record names
     */
    public static CookLogs of(BatchRecord batch, List<ProbeLog> logs) throws ColumnMissingException {
        return of(
                batch,
                logs,
                batch.logs().stream()
                        .map(source -> -source.clock().aheadMillis())
                        .toList());
    }

    private static CookLogs of(BatchRecord batch, List<ProbeLog> logs, List<Long> shiftMillis)
            throws ColumnMissingException {
        if (logs.size() != batch.logs().size()) {
            throw new IllegalArgumentException(
                    logs.size() + " logs for a record of " + batch.logs().size());
        }
        CookLogs cook = new CookLogs(batch, logs, shiftMillis);
        cook.collect();
        return cook;
    }

    /**
     * The same logs with every clock as far from what the record says as it may be: one for each way the clocks can err
     * together. None where every clock is exact.
     */
    public List<CookLogs> clockCorners() throws ColumnMissingException {
        List<List<Long>> corners = new ArrayList<>(List.of(List.of()));
        boolean any = false;
        for (int i = 0; i < logs.size(); i++) {
            long within = batch.logs().get(i).clock().withinMillis();
            any |= within > 0;
            List<List<Long>> wider = new ArrayList<>();
            for (List<Long> corner : corners) {
                for (long error : within > 0 ? new long[] {-within, within} : new long[] {0}) {
                    List<Long> more = new ArrayList<>(corner);
                    more.add(shiftMillis.get(i) + error);
                    wider.add(more);
                }
            }
            corners = wider;
        }
        List<CookLogs> cooks = new ArrayList<>();
        for (List<Long> corner : any ? corners : List.<List<Long>>of()) {
            cooks.add(of(batch, logs, corner));
        }
        return cooks;
    }

    public BatchRecord batch() {
        return batch;
    }

    /** The logs as read, each on its own clock, in the order of the record. */
    public List<ProbeLog> logs() {
        return logs;
    }

    /** Whether there is one log on the kitchen's own clock whose columns measured one thing throughout. */
    private boolean isPlain() {
        return logs.size() == 1
                && shiftMillis.get(0) == 0
                && batch.logs().get(0).columns().stream()
                        .allMatch(use -> use.from().isEmpty()
                                && use.to().isEmpty()
                                && use.probe().equals(use.heading()));
    }

    private void collect() throws ColumnMissingException {
        for (int i = 0; i < logs.size(); i++) {
            ProbeLog log = logs.get(i);
            for (ColumnUse use : batch.logs().get(i).columns()) {
                Optional<Integer> channel = log.channelNamed(use.heading());
                if (channel.isEmpty()) {
                    throw new ColumnMissingException(
                            log.fileName(),
                            use.heading(),
                            log.channels().stream().map(found -> found.name()).toList());
                }
                List<Reading> stretch = new ArrayList<>();
                for (int row = 0; row < log.rows(); row++) {
                    double celsius = log.celsius(channel.get(), row);
                    long millis = log.millis(row) + shiftMillis.get(i);
                    if (!Double.isNaN(celsius) && use.holdsAt(millis)) {
                        stretch.add(new Reading(millis, celsius, i, log.line(row)));
                    }
                }
                readings.computeIfAbsent(new Probe(use.role(), use.probe()), any -> new ArrayList<>())
                        .add(stretch.toArray(new Reading[0]));
            }
        }
    }

    /** All readings of a probe in order of time; a second one at the same instant stands a millisecond later. */
    private Reading[] ordered(Probe probe) {
        List<Reading[]> stretches = readings.getOrDefault(probe, List.of());
        if (stretches.size() == 1) {
            return stretches.get(0);
        }
        Reading[] all = stretches.stream()
                .flatMap(Arrays::stream)
                .sorted(Comparator.comparingLong(Reading::millis).thenComparingInt(Reading::log))
                .toArray(Reading[]::new);
        for (int i = 1; i < all.length; i++) {
            if (all[i].millis() <= all[i - 1].millis()) {
                all[i] = new Reading(all[i - 1].millis() + 1, all[i].celsius(), all[i].log(), all[i].line());
            }
        }
        return all;
    }

    /** The core probes in the order of the record, each reading corrected for the known error of its instrument. */
    public List<Trace> core() {
        return readings.keySet().stream()
                .filter(probe -> probe.role() == ColumnRole.CORE)
                .map(this::trace)
                .toList();
    }

    private Trace trace(Probe probe) {
        Reading[] all = ordered(probe);
        long[] millis = new long[all.length];
        double[] celsius = new double[all.length];
        double[] tolerance = new double[all.length];
        double[] correction = new double[logs.size()];
        for (int i = 0; i < correction.length; i++) {
            correction[i] = InstrumentStanding.of(source(i).instrument()).correctionCelsius();
        }
        for (int i = 0; i < all.length; i++) {
            millis[i] = all[i].millis();
            celsius[i] = all[i].celsius() + correction[all[i].log()];
            tolerance[i] = source(all[i].log()).instrument().toleranceCelsius();
        }
        return batch.instruments().size() == 1
                ? new Trace(
                        probe.name(), millis, celsius, source(0).instrument().toleranceCelsius())
                : Trace.ofInstruments(probe.name(), millis, celsius, tolerance);
    }

    private LogSource source(int log) {
        return batch.logs().get(log);
    }

    /**
     * All probes of the record side by side on the kitchen's clock, as read; the log itself where there is one on that
     * clock whose columns measured one thing throughout.
     */
    public ProbeLog joined() {
        if (isPlain()) {
            return logs.get(0);
        }
        List<Probe> probes = List.copyOf(readings.keySet());
        ProbeLog.Builder joined = ProbeLog.named(
                String.join(" + ", logs.stream().map(ProbeLog::fileName).toList()));
        for (Probe probe : probes) {
            joined.channel(probe.name(), unitOf(probe));
        }
        record Cell(int channel, Reading reading) {}
        List<Cell> cells = new ArrayList<>();
        for (int channel = 0; channel < probes.size(); channel++) {
            for (Reading reading : ordered(probes.get(channel))) {
                cells.add(new Cell(channel, reading));
            }
        }
        cells.sort(Comparator.comparingLong(cell -> cell.reading().millis()));
        double[] row = new double[probes.size()];
        for (int from = 0; from < cells.size(); ) {
            long millis = cells.get(from).reading().millis();
            int line = cells.get(from).reading().line();
            Arrays.fill(row, Double.NaN);
            for (; from < cells.size() && cells.get(from).reading().millis() == millis; from++) {
                row[cells.get(from).channel()] = cells.get(from).reading().celsius();
            }
            joined.row(millis, line, row);
        }
        return joined.faults(faults())
                .contents(logs.stream().flatMap(log -> log.contents().stream()).toList())
                .build();
    }

    /**
     * What was read of each log, in one line: {@code cook.csv: 912 rows in the file, 910 read, 2 left out (2 without a
     * time); Core (core, °F), Bath (bath, °F)}.
     */
    public List<String> summaries() {
        List<String> summaries = new ArrayList<>();
        for (int i = 0; i < logs.size(); i++) {
            ProbeLog log = logs.get(i);
            String rows = log.contents().stream().map(LogContents::words).collect(Collectors.joining("; "));
            String columns = source(i).columns().stream()
                    .map(use -> use.heading() + " (" + use.role().title() + ", "
                            + log.channels()
                                    .get(log.channelNamed(use.heading()).orElseThrow())
                                    .unit()
                                    .symbol()
                            + ")")
                    .collect(Collectors.joining(", "));
            summaries.add((rows.isEmpty() ? log.fileName() + ": " + log.rows() + " rows" : rows) + "; " + columns);
        }
        return summaries;
    }

    private TemperatureUnit unitOf(Probe probe) {
        for (int i = 0; i < logs.size(); i++) {
            for (ColumnUse use : source(i).columns()) {
                if (use.role() == probe.role() && use.probe().equals(probe.name())) {
                    ProbeLog log = logs.get(i);
                    return log.channels()
                            .get(log.channelNamed(use.heading()).orElseThrow())
                            .unit();
                }
            }
        }
        throw new IllegalStateException("no such probe: " + probe);
    }

    private List<LogFault> faults() {
        if (logs.size() == 1) {
            return logs.get(0).faults();
        }
        return logs.stream()
                .flatMap(log -> log.faults().stream()
                        .map(fault -> new LogFault(
                                fault.kind(),
                                fault.channel(),
                                fault.firstLine(),
                                fault.lastLine(),
                                log.fileName() + ": " + fault.detail())))
                .toList();
    }

    /**
     * Where two instruments measured one core at one time: the largest difference of their corrected readings, as far as
     * it exceeds their tolerances together. Readings a minute apart at most are compared.
     */
    public List<Disagreement> disagreements() {
        List<Disagreement> found = new ArrayList<>();
        readings.forEach((probe, stretches) -> {
            if (probe.role() != ColumnRole.CORE) {
                return;
            }
            for (int a = 0; a < stretches.size(); a++) {
                for (int b = a + 1; b < stretches.size(); b++) {
                    disagreement(probe, stretches.get(a), stretches.get(b)).ifPresent(found::add);
                }
            }
        });
        return found;
    }

    /**
     * Two instruments that do not agree on one core.
     *
     * @param probe the core probe
     * @param first the id of one instrument
     * @param second the id of the other
     * @param millis when they differed most
     * @param differenceCelsius by how much, in °C
     * @param toleranceCelsius their tolerances together, in °C
     */
    public record Disagreement(
            String probe,
            String first,
            String second,
            long millis,
            double differenceCelsius,
            double toleranceCelsius) {}

    private Optional<Disagreement> disagreement(Probe probe, Reading[] first, Reading[] second) {
        if (first.length == 0 || second.length == 0 || first[0].log() == second[0].log()) {
            return Optional.empty();
        }
        LogSource one = source(first[0].log());
        LogSource other = source(second[0].log());
        double correction = InstrumentStanding.of(one.instrument()).correctionCelsius()
                - InstrumentStanding.of(other.instrument()).correctionCelsius();
        double tolerance =
                one.instrument().toleranceCelsius() + other.instrument().toleranceCelsius();
        double worst = 0;
        long at = 0;
        int j = 0;
        for (Reading reading : first) {
            while (j + 1 < second.length
                    && Math.abs(second[j + 1].millis() - reading.millis())
                            <= Math.abs(second[j].millis() - reading.millis())) {
                j++;
            }
            double difference = Math.abs(reading.celsius() - second[j].celsius() + correction);
            if (Math.abs(second[j].millis() - reading.millis()) <= 60_000 && difference > worst) {
                worst = difference;
                at = reading.millis();
            }
        }
        return worst > tolerance + 1e-9
                ? Optional.of(new Disagreement(
                        probe.name(), one.instrument().id(), other.instrument().id(), at, worst, tolerance))
                : Optional.empty();
    }
}
