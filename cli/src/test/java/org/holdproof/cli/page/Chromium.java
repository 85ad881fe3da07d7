package org.holdproof.cli.page;

import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.io.InputStream;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.openqa.selenium.By;
import org.openqa.selenium.JavascriptExecutor;
import org.openqa.selenium.Keys;
import org.openqa.selenium.NoSuchElementException;
import org.openqa.selenium.StaleElementReferenceException;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.chrome.ChromeDriverService;
import org.openqa.selenium.chrome.ChromeOptions;
import org.openqa.selenium.remote.RemoteWebDriver;

/** A real browser on a page: Debian's chromium, driven as a person would, without a network. */
final class Chromium implements AutoCloseable {
    private static final Duration PATIENCE = Duration.ofSeconds(60);

    private final ChromeDriverService service;
    private final RemoteWebDriver driver;

    private Chromium(ChromeDriverService service, RemoteWebDriver driver) {
        this.service = service;
        this.driver = driver;
    }

    /** Opens a page, or skips the test where there is no browser; in CI there must be one. */
    static Chromium at(URI address, int width, int height) throws IOException {
        Optional<Path> browser = found("chromium");
        Optional<Path> chauffeur = found("chromedriver");
        boolean both = browser.isPresent() && chauffeur.isPresent();
        if (!both && "true".equals(System.getenv("CI"))) {
            throw new AssertionError("CI needs Debian's chromium and chromium-driver; .ci/run installs them");
        }
        assumeTrue(both, "no browser: sudo apt-get install -y chromium chromium-driver");
        ChromeOptions options = new ChromeOptions();
        options.setBinary(browser.orElseThrow().toFile());
        options.addArguments(
                "--headless",
                "--no-sandbox",
                "--disable-gpu",
                "--no-first-run",
                "--disable-background-networking",
                "--disable-component-update",
                "--disable-sync",
                "--disable-quic",
                "--disable-dev-shm-usage",
                "--hide-scrollbars",
                "--force-device-scale-factor=1",
                "--host-resolver-rules=MAP * ~NOTFOUND , EXCLUDE 127.0.0.1");
        ChromeDriverService service = new ChromeDriverService.Builder()
                .usingDriverExecutable(chauffeur.orElseThrow().toFile())
                .usingAnyFreePort()
                .withSilent(true)
                .build();
        service.start();
        Chromium chromium = new Chromium(service, new RemoteWebDriver(service.getUrl(), options));
        chromium.size(width, height);
        chromium.driver.get(address.toString());
        chromium.until("document.body.dataset.ready");
        // A file is handed to the chooser's field; no window of the system is opened.
        chromium.run("HTMLInputElement.prototype.click = function () {}");
        return chromium;
    }

    private static Optional<Path> found(String program) {
        return Stream.of(System.getenv().getOrDefault("PATH", "").split(":"))
                .map(folder -> Path.of(folder, program))
                .filter(Files::isExecutable)
                .findFirst();
    }

    /** The driver's own way to the browser's developer tools. */
    private void devTools(String command, Map<String, Object> parameters) {
        try {
            String address = service.getUrl() + "/session/" + driver.getSessionId() + "/goog/cdp/execute";
            HttpResponse<String> response = HttpClient.newHttpClient()
                    .send(
                            HttpRequest.newBuilder(URI.create(address))
                                    .POST(HttpRequest.BodyPublishers.ofByteArray(Caller.JSON.writeValueAsBytes(
                                            Map.of("cmd", command, "params", parameters))))
                                    .build(),
                            HttpResponse.BodyHandlers.ofString());
            if (response.statusCode() != 200) {
                throw new AssertionError(response.body());
            }
        } catch (IOException failed) {
            throw new AssertionError(failed);
        } catch (InterruptedException ended) {
            Thread.currentThread().interrupt();
            throw new AssertionError(ended);
        }
    }

    void size(int width, int height) {
        devTools(
                "Emulation.setDeviceMetricsOverride",
                Map.of("width", width, "height", height, "deviceScaleFactor", 1, "mobile", false));
    }

    void dark(boolean dark) {
        devTools(
                "Emulation.setEmulatedMedia",
                Map.of("features", List.of(Map.of("name", "prefers-color-scheme", "value", dark ? "dark" : "light"))));
    }

    void print() {
        devTools("Emulation.setEmulatedMedia", Map.of("media", "print"));
    }

    /** What a line of script gives. */
    String run(String script, Object... arguments) {
        return String.valueOf(((JavascriptExecutor) driver).executeScript(script, arguments));
    }

    /** Waits until an expression holds. */
    void until(String expression) {
        long end = System.nanoTime() + PATIENCE.toNanos();
        while (System.nanoTime() < end) {
            if (Boolean.TRUE.equals(
                    ((JavascriptExecutor) driver).executeScript("return Boolean(" + expression + ")"))) {
                return;
            }
            try {
                Thread.sleep(40);
            } catch (InterruptedException ended) {
                Thread.currentThread().interrupt();
                throw new AssertionError("interrupted", ended);
            }
        }
        throw new AssertionError("never: " + expression + "; on the screen: " + text());
    }

    void untilSays(String words) {
        until("document.querySelector('main').innerText.includes(" + quoted(words) + ")");
    }

    static String quoted(String words) {
        return "'" + words.replace("\\", "\\\\").replace("'", "\\'") + "'";
    }

    String text() {
        return driver.findElement(By.tagName("main")).getText();
    }

    String heading() {
        return driver.findElement(By.tagName("h1")).getText();
    }

    void screen(String name) {
        run("location.hash = arguments[0]", "#" + name);
        until("document.body.dataset.screen === " + quoted(name));
    }

    void click(String id) {
        again(id, WebElement::click);
    }

    /** A verdict may draw the screen anew just then: a person looks again, and so does this. */
    private void again(String id, Consumer<WebElement> act) {
        for (int time = 1; ; time++) {
            until("document.getElementById(" + quoted(id) + ")");
            try {
                WebElement element = driver.findElement(By.id(id));
                run("arguments[0].scrollIntoView({block: 'center'})", element);
                act.accept(element);
                return;
            } catch (StaleElementReferenceException | NoSuchElementException redrawn) {
                if (time == 5) {
                    throw redrawn;
                }
            }
        }
    }

    /** Types into a field and leaves it. */
    void type(String id, String words) {
        again(id, field -> field.sendKeys(Keys.chord(Keys.CONTROL, "a"), words));
        run("document.activeElement.blur()");
    }

    void choose(String id, String value) {
        until("document.getElementById(" + quoted(id) + ")");
        run(
                "const e = document.getElementById(arguments[0]); e.value = arguments[1];"
                        + " e.dispatchEvent(new Event('change', {bubbles: true}))",
                id,
                value);
    }

    /** Presses keys wherever the focus is. */
    void press(CharSequence... keys) {
        driver.switchTo().activeElement().sendKeys(keys);
    }

    /** Goes on with Tab until the focus is on an element, as somebody without a mouse would. */
    void tabTo(String id) {
        for (int i = 0; i < 150; i++) {
            if (id.equals(driver.switchTo().activeElement().getDomProperty("id"))) {
                return;
            }
            press(Keys.TAB);
        }
        throw new AssertionError("Tab never comes to " + id + " on " + heading());
    }

    String focused() {
        return String.valueOf(driver.switchTo().activeElement().getDomProperty("id"));
    }

    void handIn(String chooser, Path... files) {
        click(chooser);
        until("document.querySelector('input[type=file]')");
        driver.findElement(By.cssSelector("input[type=file]"))
                .sendKeys(String.join("\n", Stream.of(files).map(Path::toString).toList()));
    }

    int count(String selector) {
        return driver.findElements(By.cssSelector(selector)).size();
    }

    /** The serious and critical findings of axe-core on what is shown. */
    List<String> findings() throws IOException {
        try (InputStream axe = Chromium.class.getResourceAsStream("/axe.min.js")) {
            if (axe == null) {
                throw new AssertionError("axe.min.js is not on the class path");
            }
            run("if (!window.axe) { " + new String(axe.readAllBytes(), StandardCharsets.UTF_8) + " }");
        }
        Object found = ((JavascriptExecutor) driver)
                .executeAsyncScript("const done = arguments[arguments.length - 1];"
                        + "axe.run(document, {resultTypes: ['violations']}).then(r => done(r.violations"
                        + ".filter(v => v.impact === 'serious' || v.impact === 'critical')"
                        + ".map(v => v.id + ': ' + v.nodes.slice(0, 3).map(n => n.html.slice(0, 160) + ' ' + (n.any[0]?.message ?? '')).join(' | '))))"
                        + ".catch(e => done(['axe failed: ' + e]))");
        return found instanceof List<?> list
                ? list.stream().map(String::valueOf).toList()
                : List.of("axe gave no answer");
    }

    /** Where everything the page fetched came from. */
    List<String> fetched() {
        Object names = ((JavascriptExecutor) driver)
                .executeScript("return performance.getEntriesByType('resource').map(e => e.name)");
        return names instanceof List<?> list
                ? list.stream().map(String::valueOf).toList()
                : List.of();
    }

    long weight() {
        Object bytes = ((JavascriptExecutor) driver)
                .executeScript("return [...performance.getEntriesByType('resource'),"
                        + " ...performance.getEntriesByType('navigation')]"
                        + ".filter(e => !e.name.includes('/ask/')).reduce((sum, e) => sum + e.encodedBodySize, 0)");
        return ((Number) Objects.requireNonNull(bytes)).longValue();
    }

    @Override
    public void close() {
        driver.quit();
        service.stop();
    }
}
