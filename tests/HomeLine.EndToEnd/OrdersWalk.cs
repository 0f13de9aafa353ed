using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace HomeLine.EndToEnd;

/// <summary>A referral without a time, a spoken order read back, a hold; each on its page.</summary>
public sealed class OrdersWalk
{
    [Fact]
    public async Task A_referral_an_order_and_a_hold_are_put_down()
    {
        Assert.SkipUnless(Browser.IsInstalled, Browser.Missing);
        await using AppUnderTest app = await AppUnderTest.StartAsync();
        await using Browser browser = await Browser.StartAsync();
        IPage page = await browser.OpenAsync();
        await DemoAgency.OpenAsync(page, app, decides: true);

        await page.GotoAsync(app.Address + "/orders");
        await page.GetByText("Add a referral").ClickAsync();
        await page.GetByLabel("Who is referred?").FillAsync("Vervain Thistlecomb");
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep the referral" }).ClickAsync();
        await Expect(page.GetByText("No time was written down: counted from")).ToBeVisibleAsync();
        await page.StandsUpAsync("orders");

        await page.GotoAsync(app.Address + "/patients/P01");
        await page.GetByText("Take an order").ClickAsync();
        await page.GetByLabel("Visits a week").FillAsync("2");
        await page.GetByLabel("It was spoken, not written").CheckAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep the order" }).ClickAsync();
        await Expect(page.GetByText("read back and confirmed, with the name")).ToBeVisibleAsync();
        await page.GetByLabel("Written down, read back and confirmed").CheckAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep the order" }).ClickAsync();
        await Expect(page.GetByText("The order is kept.")).ToBeVisibleAsync();
        await page.GetByText("Put on hold").First.ClickAsync();
        await page.StandsUpAsync("patient-forms");
        await page.GetByRole(AriaRole.Button, new() { Name = "Put on hold" }).ClickAsync();
        await Expect(page.GetByText("it starts today")).ToBeVisibleAsync();
        await page.GetByText("The patient is home").ClickAsync();
        await page.StandsUpAsync("patient-return");

        IPage phone = await DemoAgency.OnAPhoneAsync(browser, page);
        foreach ((string address, string name) in ((string, string)[])[("/orders", "orders"), ("/patients/P01", "patient-keeping"), ("/due", "due-with-referral")])
        {
            await phone.GotoAsync(app.Address + address);
            await phone.StandsUpAsync($"dark-{name}");
        }
    }
}
