package org.ebbwatch.browser;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static com.microsoft.playwright.assertions.PlaywrightAssertions.setDefaultAssertionTimeout;

import com.microsoft.playwright.Browser;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.BrowserType.LaunchOptions;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.Page.GetByRoleOptions;
import com.microsoft.playwright.Playwright;
import com.microsoft.playwright.options.AriaRole;
import com.microsoft.playwright.options.ColorScheme;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.ebbwatch.handwork.Place;
import org.junit.jupiter.api.Assumptions;

/**
 * Chromium without a window, and what it complained of. The one installed on this machine is taken, or the one that
 * {@code -Dchromium=PATH} names; where there is none the tests report themselves skipped.
 */
final class Browsing implements AutoCloseable {
    private static final Path CHROMIUM = Path.of(System.getProperty("chromium", "/usr/bin/chromium"));
    private static final double PATIENCE_MILLIS = 60_000;

    private static final String NO_ANSWER = "Failed to load resource";

    /** The size of what it is looked at with. */
    enum Screen {
        DESK(1280, 900),
        PHONE(360, 740);

        private final int width;
        private final int height;

        Screen(int width, int height) {
            this.width = width;
            this.height = height;
        }
    }

    private final Playwright playwright;
    private final Browser browser;
    private final List<String> complaints = new ArrayList<>();
    private BrowserContext context;

    Browsing() {
        setDefaultAssertionTimeout(PATIENCE_MILLIS);
        Assumptions.assumeTrue(
                Files.isExecutable(CHROMIUM), "no browser: there is no " + CHROMIUM + "; install Debian's chromium");
        playwright = Playwright.create(
                new Playwright.CreateOptions().setEnv(Map.of("PLAYWRIGHT_SKIP_BROWSER_DOWNLOAD", "1")));
        browser = playwright
                .chromium()
                .launch(new LaunchOptions()
                        .setExecutablePath(CHROMIUM)
                        .setArgs(List.of(
                                "--no-sandbox",
                                "--disable-gpu",
                                "--disable-quic",
                                "--no-first-run",
                                "--disable-background-networking",
                                "--disable-component-update",
                                "--disable-sync")));
    }

    /** A page of the place, with nothing remembered from before; the page before is closed. */
    Page open(Place place, Screen screen, ColorScheme scheme) {
        leave();
        complaints.clear();
        context = browser.newContext(new Browser.NewContextOptions()
                .setBaseURL(place.server().getURL().toString())
                .setViewportSize(screen.width, screen.height)
                .setColorScheme(scheme)
                .setAcceptDownloads(true));
        context.setDefaultTimeout(PATIENCE_MILLIS);
        Page page = context.newPage();
        page.onPageError(complaints::add);
        page.onConsoleMessage(message -> {
            if (message.type().equals("error") && !message.text().startsWith(NO_ANSWER)) {
                complaints.add(message.text());
            }
        });
        page.navigate("/");
        assertThat(page.locator("body")).not().hasClass("waiting");
        return page;
    }

    /** Closes the page, so that it asks no more. */
    void leave() {
        if (context != null) {
            context.close();
            context = null;
        }
    }

    /** Page errors, and what the browser wrote as an error, such as a breach of the content policy. */
    List<String> complaints() {
        return complaints;
    }

    static void signIn(Page page, Place place) {
        press(page, AriaRole.LINK, "Sign in");
        page.getByLabel("the operator's token").fill(place.token());
        press(page, AriaRole.BUTTON, "Sign in");
        assertThat(role(page, AriaRole.LINK, "Signed in")).isVisible();
    }

    static Locator role(Page page, AriaRole role, String name) {
        return page.getByRole(role, new GetByRoleOptions().setName(name).setExact(true));
    }

    static void press(Page page, AriaRole role, String name) {
        role(page, role, name).click();
    }

    /** Presses a button of the question that is open, and waits until it is answered. */
    static void answer(Page page, String button) {
        Locator question = page.locator("#deed");
        question.getByRole(
                        AriaRole.BUTTON,
                        new Locator.GetByRoleOptions().setName(button).setExact(true))
                .click();
        assertThat(question).isHidden();
    }

    /** Goes on from stop to stop until the one with this name has the focus. */
    static void tabTo(Page page, String name) {
        String focused =
                "() => { const at = document.activeElement; return at.labels?.[0]?.textContent ?? at.textContent; }";
        for (int stops = 0; stops < 80; stops++) {
            page.keyboard().press("Tab");
            if (name.equals(page.evaluate(focused))) {
                return;
            }
        }
        throw new AssertionError("the focus never comes to " + name);
    }

    /** Goes to the stop with this name by the keyboard, and presses Enter there. */
    static void enter(Page page, String name) {
        tabTo(page, name);
        page.keyboard().press("Enter");
    }

    /** Goes to the field with this label by the keyboard, and types. */
    static void type(Page page, String label, String text) {
        tabTo(page, label);
        page.keyboard().type(text);
    }

    @Override
    public void close() {
        browser.close();
        playwright.close();
    }
}
