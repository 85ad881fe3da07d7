package org.holdproof.cli.page;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.util.Locale;
import java.util.Optional;
import org.holdproof.core.input.UnreadableInputException;
import org.holdproof.core.log.ProbeLog;
import org.holdproof.core.rules.RuleLibrary;
import org.holdproof.core.verdict.Assessment;
import org.holdproof.core.verdict.Check;
import org.holdproof.report.Recomputation;
import org.holdproof.report.Report;
import org.holdproof.report.archive.Attachment;
import org.holdproof.report.recheck.Recheck;
import org.holdproof.report.recheck.RecheckReport;
import org.holdproof.report.recheck.RulesComparison;
import org.holdproof.report.seal.Fingerprint;

/** The four answers on a report: is it as sealed, whose seal, do the figures come out, what was the verdict. */
final class RecheckAnswer {
    private static final long LARGEST = 512L << 20;
    private static final int MOST_DIFFERENCES = 50;

    private final Shelf shelf;
    private final RuleLibrary builtIn;

    RecheckAnswer(Shelf shelf, RuleLibrary builtIn) {
        this.shelf = shelf;
        this.builtIn = builtIn;
    }

    ObjectNode json(Asked asked) throws Fault, IOException {
        byte[] pdf = bytes(asked);
        Optional<Fingerprint> expected = fingerprint(asked);
        RecheckReport report = expected.isPresent() ? Recheck.of(pdf, expected.get()) : Recheck.of(pdf);
        boolean otherSigner = !report.findings().isEmpty()
                && report.findings().stream().allMatch(finding -> finding.kind() == RecheckReport.Kind.OTHER_SIGNER);
        boolean whole = report.intact() || otherSigner;
        ObjectNode json = Asked.MAPPER.createObjectNode();
        json.put("state", otherSigner ? "other signer" : report.state().name().toLowerCase(Locale.ROOT));
        ArrayNode findings = json.putArray("findings");
        report.findings().forEach(finding -> findings.add(finding.detail()));
        report.signer().ifPresent(signer -> json.putObject("signer")
                .put("name", signer.name())
                .put("selfSigned", signer.selfSigned())
                .put("fingerprint", signer.fingerprint().hex()));
        report.claimedTime().ifPresent(time -> json.put("claimed", time.toEpochMilli()));
        report.timestamp().ifPresent(stamp -> json.put("witnessed", stamp.time().toEpochMilli()));
        ArrayNode inside = json.putArray("inside");
        for (Attachment.Role role : Attachment.Role.values()) {
            report.attachment(role).ifPresent(file -> inside.addObject()
                    .put("role", role.name().toLowerCase(Locale.ROOT))
                    .put("name", file.name())
                    .put("bytes", file.content().length)
                    .put("sha256", file.sha256()));
        }
        if (whole) {
            figures(json, report);
        }
        return json;
    }

    private void figures(ObjectNode json, RecheckReport report) {
        Recomputation figures = Report.recheck(report, builtIn).figures();
        ArrayNode differences = json.putArray("differences");
        figures.differences().stream().limit(MOST_DIFFERENCES).forEach(differences::add);
        json.put("edition", figures.edition().orElse(""));
        json.put("published", figures.rules().map(RulesComparison::isPublished).orElse(false));
        ArrayNode rules = json.putArray("rules");
        figures.rules().ifPresent(compared -> compared.differences().stream()
                .limit(MOST_DIFFERENCES)
                .forEach(difference -> rules.add(difference.toString())));
        if (figures.again().isEmpty()) {
            return;
        }
        Assessment again = figures.again().get();
        json.put("verdict", again.verdict().words());
        json.put("batch", again.batch().batch());
        json.put("product", again.batch().product().name());
        json.put("kitchen", again.batch().kitchen().name());
        json.put("authority", again.authority().title());
        json.put("authorityId", again.authority().id());
        json.put("approval", again.batch().approval());
        checks(json.putArray("checks"), again, figures.byPublished());
        json.put("least", least(again));
        figures.byPublished()
                .ifPresent(by -> json.put("publishedVerdict", by.verdict().words()));
        ArrayNode cautions = json.putArray("cautions");
        again.cautions().forEach(caution -> cautions.add(caution.text()));
        ArrayNode left = json.putArray("left");
        again.authority().left().forEach(left::add);
        picture(json, report, again);
    }

    private static void checks(ArrayNode list, Assessment again, Optional<Assessment> byPublished) {
        for (Check check : again.checks()) {
            ObjectNode one = list.addObject();
            one.put("id", check.id());
            one.put("title", check.title());
            one.put("rule", check.rule());
            one.put("verdict", check.verdict().words());
            one.put("why", check.why());
            check.window().ifPresent(span -> one.put("from", span.fromMillis()).put("to", span.toMillis()));
            byPublished.flatMap(by -> by.check(check.id())).ifPresent(by -> one.put("publishedRule", by.rule())
                    .put("publishedVerdict", by.verdict().words()));
        }
    }

    /** The check that came nearest to its limit, as a part of the limit; empty where none was measured. */
    private static String least(Assessment again) {
        return again.checks().stream()
                .filter(check -> check.margin().isPresent()
                        && check.limit().isPresent()
                        && check.limit().getAsDouble() > 0)
                .min((a, b) -> Double.compare(part(a), part(b)))
                .map(Check::title)
                .orElse("");
    }

    private static double part(Check check) {
        return check.margin().orElseThrow() / check.limit().orElseThrow();
    }

    /** The logs inside, side by side, to be drawn. */
    private static void picture(ObjectNode json, RecheckReport report, Assessment again) {
        ProbeLog log;
        try {
            log = Reports.logs(report).joined();
        } catch (UnreadableInputException impossible) {
            throw new IllegalStateException("logs that were just judged cannot be read", impossible);
        }
        json.set("log", ReadAnswer.describe(log));
        ObjectNode record = RecordAnswer.describe(again.batch());
        record.set("limits", RuleLines.of(again.authority(), again.batch().product()));
        ArrayNode roles = record.putArray("roles");
        log.channels().forEach(channel -> roles.add(role(channel.name(), again)));
        json.set("record", record);
    }

    /** What a probe measured, by its heading or by its place's name. */
    private static String role(String channel, Assessment again) {
        return again.batch().logs().stream()
                .flatMap(log -> log.columns().stream())
                .filter(use -> use.probe().strip().equalsIgnoreCase(channel.strip())
                        || use.heading().strip().equalsIgnoreCase(channel.strip()))
                .map(use -> use.role().title())
                .findFirst()
                .orElse("none");
    }

    /** One of the files that ride inside, to be looked at. */
    Reply inside(Asked asked) throws Fault, IOException {
        String role = asked.text("role").toUpperCase(Locale.ROOT);
        RecheckReport report = Recheck.of(bytes(asked));
        for (Attachment.Role one : Attachment.Role.values()) {
            if (one.name().equals(role)) {
                Attachment file = report.attachment(one)
                        .orElseThrow(() -> Fault.missing("No such file rides inside this report."));
                return Reply.download(file.mimeType(), file.name(), file.content());
            }
        }
        throw Fault.badRequest("'role' names nothing that rides in a report.");
    }

    private byte[] bytes(Asked asked) throws Fault, IOException {
        var file = shelf.find(asked.text("file"));
        if (Files.size(file) > LARGEST) {
            throw Fault.tooLarge("A report is never so large.");
        }
        byte[] bytes = Files.readAllBytes(file);
        if (!new String(bytes, 0, Math.min(bytes.length, 1024), StandardCharsets.ISO_8859_1).contains("%PDF-")) {
            throw Fault.unreadable("This is no PDF; a report is one.");
        }
        return bytes;
    }

    private static Optional<Fingerprint> fingerprint(Asked asked) throws Fault {
        Optional<String> hex = asked.optionalText("fingerprint").filter(text -> !text.isBlank());
        try {
            return hex.map(Fingerprint::parse);
        } catch (IllegalArgumentException unfit) {
            throw Fault.unreadable(String.valueOf(unfit.getMessage()));
        }
    }
}
