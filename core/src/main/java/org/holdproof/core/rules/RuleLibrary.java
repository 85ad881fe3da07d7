package org.holdproof.core.rules;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.holdproof.core.input.JsonValue;
import org.holdproof.core.input.StrictJson;
import org.holdproof.core.input.UnreadableInputException;
import org.holdproof.core.rules.loading.GrowthFiles;
import org.holdproof.core.rules.loading.HandbookFiles;
import org.holdproof.core.rules.loading.LethalityFiles;
import org.holdproof.core.rules.loading.LimitFiles;
import org.holdproof.core.rules.loading.ProfileFiles;
import org.holdproof.core.rules.loading.QualityFiles;
import org.holdproof.core.rules.loading.RuleFiles;
import org.holdproof.core.rules.loading.Sources;
import org.holdproof.core.rules.loading.TableFiles;

/**
 * Every rule a record can be judged by: the built-in ones, with a site's own laid over them, or exactly those an
 * archive carries. Immutable; all of it was checked when it was loaded.
 */
public final class RuleLibrary {
    /** The groups of rules that are words first. */
    public static final List<String> WRITTEN_GROUPS = List.of("measurement", "records", "packaging", "cooking");

    private final TableFiles files;
    private final String edition;
    private final Sources sources;
    private final Map<String, LethalityTable> lethality;
    private final Map<String, ThermalDeath> kinetics;
    private final Map<String, CoolingRule> cooling;
    private final Map<String, HoldingRule> holding;
    private final Map<String, ReheatingRule> reheating;
    private final Map<String, HumidityOption> humidity;
    private final Map<String, TimeLimit> timeLimits;
    private final Map<String, ExposureRule> exposures;
    private final Map<String, ShelfLifeRule> shelfLives;
    private final Map<String, Map<String, WrittenRule>> written;
    private final Map<String, AuthorityProfile> profiles;
    private final Map<String, GrowthLimit> growthLimits;
    private final Map<String, BathTime> bathTimes;
    private final Map<String, BoilingPoint> boilingPoints;
    private final Map<String, GrowthFact> growthFacts;
    private final Map<String, GrowthModel> growthModels;
    private final Map<String, GrowthLag> growthLags;
    private final Map<String, DeathTime> deathTimes;
    private final QualityTables quality;

    private RuleLibrary(TableFiles files) throws UnreadableInputException {
        this.files = files;
        edition = editionOf(files);
        sources = Sources.read(files);
        lethality = new LethalityFiles(files, sources).read();
        RuleFiles rules = new RuleFiles(files, sources);
        kinetics = rules.kinetics();
        cooling = rules.cooling();
        holding = rules.holding();
        reheating = rules.reheating();
        LimitFiles limits = new LimitFiles(files, sources);
        humidity = limits.humidity();
        timeLimits = limits.timeLimits();
        exposures = limits.exposures();
        shelfLives = limits.shelfLives();
        written = new LinkedHashMap<>();
        for (String group : WRITTEN_GROUPS) {
            written.put(group, rules.written(group));
        }
        profiles = new ProfileFiles(
                        files,
                        new ProfileFiles.Rules(
                                lethality,
                                kinetics,
                                cooling,
                                holding,
                                reheating,
                                humidity,
                                shelfLives,
                                timeLimits,
                                written))
                .read();
        HandbookFiles handbook = new HandbookFiles(files, sources);
        growthLimits = handbook.growthLimits();
        bathTimes = handbook.bathTimes();
        boilingPoints = handbook.boilingPoints();
        GrowthFiles growth = new GrowthFiles(files, sources);
        growthFacts = growth.facts();
        growthModels = growth.models(growthFacts);
        growthLags = growth.lags();
        deathTimes = growth.deathTimes();
        quality = new QualityFiles(files, sources).read();
    }

    /** The built-in tables, loaded once. */
    public static RuleLibrary builtIn() {
        return BuiltIn.LIBRARY;
    }

    /** Loads on first use, and only once. */
    private static final class BuiltIn {
        static final RuleLibrary LIBRARY = load();

        private static RuleLibrary load() {
            try {
                return new RuleLibrary(TableFiles.builtIn());
            } catch (UnreadableInputException e) {
                throw new IllegalStateException("the built-in tables of this build are damaged: " + e.getMessage(), e);
            }
        }
    }

    /**
     * The built-in tables with a site's own folder laid over them, file by file: the same path replaces a file, a name
     * with a suffix ({@code cooling-site.csv}, {@code sources-site.json}, {@code lethality/index-site.csv}) and a new
     * file under {@code lethality} or {@code authorities} add to the rest.
     *
     * @throws IOException if the folder cannot be read
     * @throws UnreadableInputException if what it holds cannot be used; says where and what to do
     */
    public static RuleLibrary withSite(Path folder) throws IOException, UnreadableInputException {
        return new RuleLibrary(builtIn().files.overlaidBy(folder));
    }

    /**
     * Exactly the tables of an {@link #archive()}, whatever is built in.
     *
     * @throws UnreadableInputException if it is damaged or no such archive
     */
    public static RuleLibrary fromArchive(byte[] zip) throws UnreadableInputException {
        return new RuleLibrary(TableFiles.fromArchive(zip));
    }

    /** All table files as a zip: the same bytes for the same tables. */
    public byte[] archive() {
        return files.archive();
    }

    /** The edition's name, whether a site's own files are in it, and the digest of all files. */
    public String edition() {
        return edition;
    }

    private static String editionOf(TableFiles files) throws UnreadableInputException {
        JsonValue json = StrictJson.read(TableFiles.EDITION, files.bytes(TableFiles.EDITION), "the list of tables");
        json.requireFields(List.of("edition", "changes", "files"), List.of());
        String name = json.field("edition").text();
        String own = "";
        if (files.has(TableFiles.SITE)) {
            JsonValue site =
                    StrictJson.read(TableFiles.SITE, files.bytes(TableFiles.SITE), "the list of a site's tables");
            own = " with the site's own "
                    + String.join(", ", site.field("files").texts());
        }
        return name + own + " (SHA-256 " + files.digest() + ")";
    }

    /** The profile a batch record names. */
    public Optional<AuthorityProfile> profile(String id) {
        return Optional.ofNullable(profiles.get(id));
    }

    public List<AuthorityProfile> profiles() {
        return List.copyOf(profiles.values());
    }

    public Optional<LethalityTable> lethalityTable(String id) {
        return Optional.ofNullable(lethality.get(id));
    }

    public List<LethalityTable> lethalityTables() {
        return List.copyOf(lethality.values());
    }

    public Optional<ThermalDeath> kinetics(String id) {
        return Optional.ofNullable(kinetics.get(id));
    }

    public List<ThermalDeath> kinetics() {
        return List.copyOf(kinetics.values());
    }

    public Optional<CoolingRule> coolingRule(String id) {
        return Optional.ofNullable(cooling.get(id));
    }

    public List<CoolingRule> coolingRules() {
        return List.copyOf(cooling.values());
    }

    public Optional<HoldingRule> holdingRule(String id) {
        return Optional.ofNullable(holding.get(id));
    }

    public List<HoldingRule> holdingRules() {
        return List.copyOf(holding.values());
    }

    public Optional<ReheatingRule> reheatingRule(String id) {
        return Optional.ofNullable(reheating.get(id));
    }

    public List<ReheatingRule> reheatingRules() {
        return List.copyOf(reheating.values());
    }

    public List<HumidityOption> humidityOptions() {
        return List.copyOf(humidity.values());
    }

    public Optional<TimeLimit> timeLimit(String id) {
        return Optional.ofNullable(timeLimits.get(id));
    }

    public List<TimeLimit> timeLimits() {
        return List.copyOf(timeLimits.values());
    }

    public Optional<ExposureRule> exposureRule(String id) {
        return Optional.ofNullable(exposures.get(id));
    }

    public List<ExposureRule> exposureRules() {
        return List.copyOf(exposures.values());
    }

    public Optional<ShelfLifeRule> shelfLife(String id) {
        return Optional.ofNullable(shelfLives.get(id));
    }

    public List<ShelfLifeRule> shelfLives() {
        return List.copyOf(shelfLives.values());
    }

    /**
     * The rules of one group that are words first.
     *
     * @param group one of {@link #WRITTEN_GROUPS}
     * @throws IllegalArgumentException if there is no such group
     */
    public List<WrittenRule> writtenRules(String group) {
        return List.copyOf(written(group).values());
    }

    /** A rule that is words first, of any group. */
    public Optional<WrittenRule> writtenRule(String id) {
        return written.values().stream()
                .flatMap(group -> Optional.ofNullable(group.get(id)).stream())
                .findFirst();
    }

    private Map<String, WrittenRule> written(String group) {
        Map<String, WrittenRule> rules = written.get(group);
        if (rules == null) {
            throw new IllegalArgumentException("no group " + group + "; there are " + WRITTEN_GROUPS);
        }
        return rules;
    }

    public List<GrowthLimit> growthLimits() {
        return List.copyOf(growthLimits.values());
    }

    public List<BathTime> bathTimes() {
        return List.copyOf(bathTimes.values());
    }

    public List<BoilingPoint> boilingPoints() {
        return List.copyOf(boilingPoints.values());
    }

    public Optional<GrowthModel> growthModel(String id) {
        return Optional.ofNullable(growthModels.get(id));
    }

    public List<GrowthModel> growthModels() {
        return List.copyOf(growthModels.values());
    }

    public List<GrowthLag> growthLags() {
        return List.copyOf(growthLags.values());
    }

    public Optional<GrowthFact> growthFact(String id) {
        return Optional.ofNullable(growthFacts.get(id));
    }

    public List<GrowthFact> growthFacts() {
        return List.copyOf(growthFacts.values());
    }

    /** Measured death times, to compare a line with; nothing is judged by them. */
    public List<DeathTime> deathTimes() {
        return List.copyOf(deathTimes.values());
    }

    /** What is published about weight, tenderness, colour and yield; nothing is judged by it. */
    public QualityTables quality() {
        return quality;
    }

    /** The documents the rules come from. */
    public Collection<Source> sources() {
        return sources.all();
    }
}
