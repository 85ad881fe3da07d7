package org.holdproof.core.assess;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import org.holdproof.core.batch.BatchRecord;
import org.holdproof.core.batch.ColumnRoles;
import org.holdproof.core.batch.Ending;
import org.holdproof.core.batch.Instrument;
import org.holdproof.core.batch.Kitchen;
import org.holdproof.core.batch.Moisture;
import org.holdproof.core.batch.Product;
import org.holdproof.core.batch.Product.Form;
import org.holdproof.core.batch.Product.Species;
import org.holdproof.core.batch.Roles;
import org.holdproof.core.batch.Stage;
import org.holdproof.core.batch.Stage.Kind;
import org.holdproof.core.log.LogSettings;
import org.holdproof.core.log.ProbeLog;
import org.holdproof.core.quantity.TemperatureUnit;
import org.holdproof.core.rules.RuleLibrary;
import org.holdproof.core.verdict.Assessment;

/**
 * A whole cook made from a seed: smoke, bag, bath, bench, hot hold, chill, store, reheat, service; baths that die, gaps,
 * several probes, media with and without a log. Invented: every core follows its medium at first order.
 */
record WholeCook(BatchRecord record, List<String> columns, List<double[]> rows) {
    private static final String[] AUTHORITIES = {
        "us-food-code-2022",
        "us-fsis-2021",
        "us-food-code-2022",
        "us-fsis-2021",
        "uk-england-wales-ni",
        "canada-cfia",
        "hong-kong-cfs",
        "us-new-york"
    };
    static final RuleLibrary LIBRARY = RuleLibrary.builtIn();

    /** A stretch in one medium. */
    private record Phase(double minutes, double medium, double speed) {}

    static WholeCook random(long seed) {
        Random random = new Random(seed * 7_919 + 17);
        String authority = AUTHORITIES[random.nextInt(AUTHORITIES.length)];
        int probes = 1 + (random.nextInt(3) == 0 ? random.nextInt(2) : 0);
        double tolerance = new double[] {0.1, 0.2, 0.5, 1.0}[random.nextInt(4)];
        double rhythm = random.nextInt(4) == 0 ? 5 : 2;
        boolean airLogged = random.nextBoolean();
        List<Phase> phases = new ArrayList<>();
        List<Stage> stages = new ArrayList<>();
        double minute = 0;
        if (random.nextInt(6) == 0) {
            double bench = random.nextInt(200);
            phases.add(new Phase(bench, 20, 1));
            minute += bench;
        }
        boolean smoked = random.nextInt(3) == 0;
        if (smoked) {
            double air = 75 + random.nextInt(40);
            double smoke = 60 + random.nextInt(200);
            phases.add(new Phase(smoke, Math.min(air, 72), 0.7));
            stages.add(stage(Kind.SMOKE, minute, minute + smoke, air, random.nextBoolean() ? smoke : 0));
            minute += smoke;
            double bench = random.nextInt(4) == 0 ? random.nextInt(200) : random.nextInt(20);
            phases.add(new Phase(bench, 20, 0.3));
            stages.add(moment(Kind.BAG, minute + bench / 2));
            minute += bench;
        } else {
            stages.add(moment(Kind.BAG, minute));
        }
        double setPoint = 58 + random.nextInt(14) + random.nextDouble();
        double bath = 200 + random.nextInt(500);
        boolean dies = random.nextInt(6) == 0;
        double alive = dies ? bath * random.nextDouble() : bath;
        phases.add(new Phase(alive, setPoint, 1.5));
        if (dies) {
            phases.add(new Phase(bath - alive, 22, 0.25));
        }
        stages.add(stage(Kind.BATH, minute, minute + bath, setPoint, 0));
        minute += bath;
        if (random.nextInt(3) == 0) {
            double rest = random.nextInt(3) == 0 ? random.nextInt(300) : random.nextInt(25);
            phases.add(new Phase(rest, 21, 0.4));
            minute += rest;
        }
        int way = random.nextInt(4);
        if (way == 0 || (way == 1 && random.nextBoolean())) {
            double hold = 30 + random.nextInt(200);
            phases.add(new Phase(hold, 56 + random.nextInt(16), 1));
            stages.add(stage(Kind.HOT_HOLD, minute, minute + hold, 65, 0));
            minute += hold;
        }
        if (way >= 2) {
            double chill = 150 + random.nextInt(250);
            phases.add(new Phase(chill, 0.5, random.nextInt(4) == 0 ? 0.3 : 1.6));
            stages.add(stage(Kind.CHILL, minute, minute + chill, 1, 0));
            minute += chill;
            if (random.nextInt(3) > 0) {
                double store = 200 + random.nextInt(600);
                double cold = random.nextInt(6) == 0 ? 12 : 1 + random.nextInt(4);
                double warm = random.nextInt(6) == 0 ? random.nextInt(60) : 0;
                phases.add(new Phase(store / 2, cold, 1));
                phases.add(new Phase(warm, 18, 0.5));
                phases.add(new Phase(store / 2 - Math.min(warm, store / 2), cold, 1));
                stages.add(stage(Kind.STORE, minute, minute + store, 3, 0));
                minute += store / 2 + warm + store / 2 - Math.min(warm, store / 2);
                if (random.nextInt(3) == 0) {
                    double reheat = 60 + random.nextInt(120);
                    phases.add(new Phase(reheat, 60 + random.nextInt(24), 1.5));
                    stages.add(stage(Kind.REHEAT, minute, minute + reheat, 70, 0));
                    minute += reheat;
                }
            }
        }
        double last = random.nextInt(5) == 0 ? random.nextInt(120) : 2;
        phases.add(new Phase(last, 21, 0.4));
        minute += last;
        int how = random.nextInt(8);
        Optional<Ending> end = Optional.empty();
        if (how < 5) {
            stages.add(moment(Kind.SERVE, minute));
        } else if (how < 7) {
            end = Optional.of(new Ending(way >= 2 ? Ending.How.IN_STORE : Ending.How.DISCARDED, instant(minute)));
        }
        phases.add(new Phase(random.nextInt(3) == 0 ? random.nextInt(300) : 0, 21, 0.5));

        List<double[]> rows = simulate(phases, probes, rhythm, random);
        if (random.nextInt(8) == 0) {
            int from = random.nextInt(rows.size() - 2);
            rows.subList(from, Math.min(rows.size() - 1, from + 1 + random.nextInt(40)))
                    .clear();
        }
        boolean beef = random.nextInt(4) > 0;
        Product product = new Product(
                "invented brisket",
                beef ? Species.BEEF : Species.PORK,
                "brisket",
                Form.INTACT,
                random.nextBoolean() ? OptionalDouble.of(10) : OptionalDouble.empty(),
                Product.Shape.SLAB,
                OptionalDouble.of(30),
                random.nextBoolean() ? OptionalDouble.of(5) : OptionalDouble.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty());
        List<String> core = probes == 1 ? List.of("P0") : List.of("P0", "P1");
        List<String> columns = new ArrayList<>(core);
        columns.add("M");
        BatchRecord record = new BatchRecord(
                "T-" + seed,
                new Kitchen("Test kitchen", "", ZoneOffset.UTC),
                authority,
                product,
                new Instrument(
                        "T",
                        tolerance,
                        Optional.of(new Instrument.InstrumentCheck(
                                LocalDate.of(1970, 1, 1),
                                Instrument.Method.ICE_POINT,
                                0,
                                OptionalDouble.empty(),
                                OptionalDouble.empty())),
                        OptionalDouble.empty()),
                new ColumnRoles(core, airLogged ? List.of("M") : List.of(), List.of()),
                LogSettings.NONE,
                stages,
                new Roles("cook", ""),
                "",
                end);
        return new WholeCook(record, columns, rows);
    }

    private static List<double[]> simulate(List<Phase> phases, int probes, double rhythm, Random random) {
        double[] core = new double[probes];
        double[] tau = new double[probes];
        for (int p = 0; p < probes; p++) {
            core[p] = 3 + random.nextDouble() * 2;
            tau[p] = 14 + random.nextInt(30);
        }
        List<double[]> rows = new ArrayList<>();
        double minute = 0;
        double next = 0;
        for (Phase phase : phases) {
            for (double spent = 0; spent < phase.minutes(); spent++) {
                for (int p = 0; p < probes; p++) {
                    core[p] += (phase.medium() - core[p]) / tau[p] * Math.min(1, phase.speed());
                }
                minute++;
                if (minute >= next) {
                    double[] row = new double[probes + 2];
                    row[0] = minute;
                    for (int p = 0; p < probes; p++) {
                        row[p + 1] = Math.round((core[p] + random.nextGaussian() * 0.03) * 10) / 10.0;
                    }
                    row[probes + 1] = Math.round(phase.medium() * 10) / 10.0;
                    rows.add(row);
                    next = minute + rhythm;
                }
            }
        }
        return rows;
    }

    private static Stage stage(Kind kind, double from, double to, double setPoint, double humidMinutes) {
        return new Stage(
                kind,
                instant(from),
                Optional.of(instant(to)),
                OptionalDouble.of(setPoint),
                humidMinutes > 0
                        ? Optional.of(new Moisture(Moisture.Means.HUMID_AIR, OptionalDouble.of(humidMinutes)))
                        : Optional.empty(),
                "");
    }

    private static Stage moment(Kind kind, double at) {
        return new Stage(kind, instant(at), Optional.empty(), OptionalDouble.empty());
    }

    static Instant instant(double minute) {
        return Instant.ofEpochMilli(Math.round(minute * 60_000));
    }

    WholeCook with(BatchRecord other) {
        return new WholeCook(other, columns, rows);
    }

    WholeCook withRows(List<double[]> others) {
        return new WholeCook(record, columns, others);
    }

    Assessment assess() {
        ProbeLog.Builder log = ProbeLog.named("invented.csv");
        columns.forEach(name -> log.channel(name, TemperatureUnit.CELSIUS));
        for (double[] row : rows) {
            log.row(Math.round(row[0] * 60_000), java.util.Arrays.copyOfRange(row, 1, row.length));
        }
        try {
            return Assessor.assess(
                    log.build(), record, LIBRARY.profile(record.authority()).orElseThrow(), LIBRARY);
        } catch (Exception e) {
            throw new AssertionError(record.toString(), e);
        }
    }
}
