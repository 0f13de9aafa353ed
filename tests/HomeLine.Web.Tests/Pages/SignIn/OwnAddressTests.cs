using HomeLine.Web.Pages.SignIn;

namespace HomeLine.Web.Tests.Pages.SignIn;

public sealed class OwnAddressTests
{
    [Theory]
    [InlineData("/week/2027-03-08")]
    [InlineData("/patients/P03?entry=E-17")]
    public void An_address_of_this_site_is_gone_back_to(string back) => Assert.Equal(back, OwnAddress.Of(back));

    [Theory]
    [InlineData(null)]
    [InlineData("")]
    [InlineData("due")]
    [InlineData("//elsewhere.example")]
    [InlineData("/\\elsewhere.example")]
    [InlineData("/a\\b")]
    [InlineData("https://elsewhere.example/due")]
    [InlineData("javascript:alert(1)")]
    [InlineData("/\t/elsewhere.example")]
    public void Any_other_address_leads_to_the_due_list(string? back) => Assert.Equal("/due", OwnAddress.Of(back));
}
