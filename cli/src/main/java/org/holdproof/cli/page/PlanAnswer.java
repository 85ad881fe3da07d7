package org.holdproof.cli.page;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.holdproof.core.batch.Product.Form;
import org.holdproof.core.batch.Product.Shape;
import org.holdproof.core.batch.Product.Species;
import org.holdproof.core.plan.BathPlan;
import org.holdproof.core.plan.ChillMedium;
import org.holdproof.core.plan.CoreCurve;
import org.holdproof.core.plan.HeatFigures;
import org.holdproof.core.plan.NoPlan;
import org.holdproof.core.plan.Pasteurization;
import org.holdproof.core.plan.Plan;
import org.holdproof.core.plan.PlannedCook;
import org.holdproof.core.plan.PlannedQuality;
import org.holdproof.core.plan.UnplannableException;
import org.holdproof.core.quality.QualityModels;
import org.holdproof.core.quality.QualityOutlook;
import org.holdproof.core.rules.AuthorityProfile;
import org.holdproof.core.rules.LethalityRow;
import org.holdproof.core.rules.RuleLibrary;
import org.holdproof.core.verdict.Caution;

/** A plan for one bath: the core as reckoned and at its slowest, from when it is safe, and what is known besides. */
final class PlanAnswer {
    private static final double FRIDGE_CELSIUS = 5;
    private static final int POINTS = 400;
    private static final double HUNDREDTHS = 100;

    private final RuleLibrary library;

    PlanAnswer(RuleLibrary library) {
        this.library = library;
    }

    ObjectNode json(Asked asked) throws Fault {
        try {
            PlannedCook cook = cook(asked);
            Optional<NoPlan> unruled = NoPlan.ifUnruled(cook);
            Plan plan = unruled.isPresent()
                    ? unruled.get()
                    : Plan.of(cook, HeatFigures.published(cook.species(), cook.fatPercent()), library);
            ObjectNode json = plan instanceof BathPlan bath ? planned(bath) : refused((NoPlan) plan);
            lowest(cook).ifPresent(row -> json.putObject("lowest")
                    .put("celsius", row.at().celsius())
                    .put("text", row.at().text()));
            return json;
        } catch (UnplannableException wrong) {
            throw Fault.unreadable(String.valueOf(wrong.getMessage()));
        }
    }

    private PlannedCook cook(Asked asked) throws Fault {
        String id = asked.text("authority");
        AuthorityProfile authority =
                library.profile(id).orElseThrow(() -> Fault.badRequest("There are no rules of this name."));
        String species = asked.text("species");
        String form = asked.text("form");
        String shape = asked.text("shape");
        return new PlannedCook(
                Stream.of(Species.values())
                        .filter(one -> one.title().equals(species))
                        .findFirst()
                        .orElseThrow(() -> Fault.badRequest("There is no such species.")),
                Stream.of(Form.values())
                        .filter(one -> one.title().equals(form))
                        .findFirst()
                        .orElseThrow(() -> Fault.badRequest("There is no such form.")),
                asked.optionalFigure("fatPercent"),
                Optional.of(Stream.of(Shape.values())
                        .filter(one -> one.title().equals(shape))
                        .findFirst()
                        .orElseThrow(() -> Fault.badRequest("There is no such shape."))),
                asked.figure("millimetres"),
                asked.has("startCelsius") ? asked.figure("startCelsius") : FRIDGE_CELSIUS,
                Optional.empty(),
                asked.figure("bathCelsius"),
                asked.has("minutes") ? OptionalDouble.of(asked.figure("minutes")) : OptionalDouble.empty(),
                authority,
                asked.optionalText("chill").orElse("ice").equals("water")
                        ? ChillMedium.STILL_WATER
                        : ChillMedium.ICE_SLUSH);
    }

    private static Optional<LethalityRow> lowest(PlannedCook cook) {
        return Pasteurization.of(cook.authority(), cook.species(), cook.form(), cook.fatPercent())
                .flatMap(
                        rule -> rule.rows().stream().min((a, b) -> Double.compare(a.at().celsius(), b.at().celsius())));
    }

    private static ObjectNode refused(NoPlan none) {
        ObjectNode json = Asked.MAPPER.createObjectNode();
        json.put("safe", false);
        json.put("reason", none.reason());
        json.put("remedy", none.remedy());
        return json;
    }

    private ObjectNode planned(BathPlan plan) {
        ObjectNode json = Asked.MAPPER.createObjectNode();
        json.put("safe", true);
        json.put("safeMinute", plan.safeMinute());
        json.put("coveringMinute", plan.coveringMinute());
        json.put("outMinute", plan.outMinute());
        plan.firstRow().ifPresent(row -> json.putObject("row")
                .put("celsius", row.row().at().celsius())
                .put("text", row.row().at().text())
                .put("minutes", row.row().seconds() / 60));
        curve(json.putObject("core"), plan.core(), 0, plan.outMinute());
        curve(json.putObject("slowest"), plan.slowest(), 0, plan.outMinute());
        CoreCurve chill = plan.chill().core();
        double chilled = chill.fallsTo(FRIDGE_CELSIUS).orElse(240);
        curve(json.putObject("chill"), chill, 0, Math.min(chilled, 600));
        ArrayNode variations = json.putArray("variations");
        plan.variations().forEach(one -> {
            ObjectNode variation =
                    variations.addObject().put("change", one.change().title());
            one.safeMinute().ifPresent(minute -> variation.put("safeMinute", minute));
        });
        ArrayNode cautions = json.putArray("cautions");
        for (Caution caution : plan.cautions()) {
            cautions.add(caution.text());
        }
        json.put("heat", plan.heat().origin());
        QualityOutlook outlook = PlannedQuality.of(
                        QualityModels.of(library), plan.cook(), plan.heat(), Optional.empty(), plan.bathMinutes())
                .outlook(plan.cook().bathCelsius(), plan.bathMinutes());
        outlook.weight().ifPresent(loss -> json.putObject("loss")
                .put("lowPercent", Math.rint(loss.leastPercent()))
                .put("highPercent", Math.rint(loss.mostPercent())));
        ArrayNode tender = json.putArray("tenderness");
        outlook.tenderness()
                .ifPresent(found -> tender.add(String.format(
                        Locale.ROOT,
                        "%s: such tough cuts took %.0f to %.0f h at %.0f °C",
                        found.word().title(),
                        found.hoursThere().low(),
                        found.hoursThere().high(),
                        found.heldCelsius())));
        return json;
    }

    private static void curve(ObjectNode json, CoreCurve curve, double from, double to) {
        ArrayNode minutes = json.putArray("minutes");
        ArrayNode celsius = json.putArray("celsius");
        for (int i = 0; i <= POINTS; i++) {
            double minute = from + (to - from) * i / POINTS;
            minutes.add(Math.rint(minute * HUNDREDTHS) / HUNDREDTHS);
            celsius.add(Math.rint(curve.celsiusAt(minute) * HUNDREDTHS) / HUNDREDTHS);
        }
    }
}
