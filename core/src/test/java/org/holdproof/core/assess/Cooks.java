package org.holdproof.core.assess;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.holdproof.core.batch.BatchRecord;
import org.holdproof.core.batch.ColumnRoles;
import org.holdproof.core.batch.Instrument;
import org.holdproof.core.batch.Kitchen;
import org.holdproof.core.batch.Product;
import org.holdproof.core.batch.Product.Form;
import org.holdproof.core.batch.Product.Shape;
import org.holdproof.core.batch.Product.Species;
import org.holdproof.core.batch.Roles;
import org.holdproof.core.batch.Stage;
import org.holdproof.core.course.CookTimeline;
import org.holdproof.core.course.Evidence;
import org.holdproof.core.log.LogSettings;
import org.holdproof.core.log.Trace;
import org.holdproof.core.quantity.Span;
import org.holdproof.core.rules.AuthorityProfile;
import org.holdproof.core.rules.RuleLibrary;
import org.holdproof.core.wording.Wording;

/** Batch records for tests; invented data. Minutes count from 1970-01-01T00:00Z, as the traces' do. */
public final class Cooks {
    public static final Product BRISKET = product(Species.BEEF, Form.INTACT);

    private Cooks() {}

    static Product product(Species species, Form form) {
        return product(species, form, 60);
    }

    /** An intact slab of beef. */
    public static Product beef(double thicknessMillimetres) {
        return product(Species.BEEF, Form.INTACT, thicknessMillimetres);
    }

    private static Product product(Species species, Form form, double thicknessMillimetres) {
        return new Product(
                "test piece",
                species,
                "",
                form,
                OptionalDouble.empty(),
                Shape.SLAB,
                OptionalDouble.of(thicknessMillimetres),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty());
    }

    public static Stage stage(Stage.Kind kind, double fromMinutes, double toMinutes) {
        return new Stage(
                kind,
                Instant.ofEpochMilli(Math.round(fromMinutes * 60_000)),
                Optional.of(Instant.ofEpochMilli(Math.round(toMinutes * 60_000))),
                OptionalDouble.empty());
    }

    public static BatchRecord batch(String authority, Product product, Stage... stages) {
        return new BatchRecord(
                "T-1",
                new Kitchen("Test kitchen", "", ZoneOffset.UTC),
                authority,
                product,
                new Instrument(
                        "T",
                        0,
                        Optional.of(new Instrument.InstrumentCheck(
                                LocalDate.of(1970, 1, 1),
                                Instrument.Method.ICE_POINT,
                                0,
                                OptionalDouble.empty(),
                                OptionalDouble.empty())),
                        OptionalDouble.empty()),
                new ColumnRoles(List.of("core"), List.of(), List.of()),
                LogSettings.NONE,
                List.of(stages),
                new Roles("cook", ""));
    }

    static Evidence evidence(BatchRecord batch, double toleranceCelsius, Trace... core) {
        AuthorityProfile authority =
                RuleLibrary.builtIn().profile(batch.authority()).orElseThrow();
        Span log = new Span(core[0].firstMillis(), core[0].lastMillis());
        return new Evidence(
                batch,
                authority,
                List.of(core),
                toleranceCelsius,
                new CookTimeline(batch, log),
                new Wording(authority.units(), batch.kitchen().zone()));
    }
}
