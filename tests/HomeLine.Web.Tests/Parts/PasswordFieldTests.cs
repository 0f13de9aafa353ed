using Bunit;
using HomeLine.Agency;
using HomeLine.Agency.Access;
using HomeLine.Web.Parts;

namespace HomeLine.Web.Tests.Parts;

public sealed class PasswordFieldTests : BunitContext
{
    [Fact]
    public void The_rule_stands_at_the_field_before_anything_is_typed()
    {
        var field = Show(null);

        Assert.Contains($"At least {PasswordRule.Shortest} characters", field.Find("#password-rule").TextContent, StringComparison.Ordinal);
        Assert.Contains("password-rule", field.Find("input").GetAttribute("aria-describedby"), StringComparison.Ordinal);
    }

    [Fact]
    public void A_password_that_is_too_short_is_refused_at_the_field_with_its_length()
    {
        string? error = PasswordField.ErrorOf(PasswordRule.Refuse("fourteen chars", []));

        var field = Show(error);

        Assert.Equal("true", field.Find("input").GetAttribute("aria-invalid"));
        Assert.Contains("It has 14 characters; at least 15 are needed.", field.Find(".error").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void A_refusal_about_something_else_is_not_said_at_the_password() =>
        Assert.Null(PasswordField.ErrorOf(new Refusal("setup-code", "This set-up link is not valid.", "Start the program again.")));

    [Fact]
    public void A_password_that_was_typed_is_never_sent_back() => Assert.False(Show(null).Find("input").HasAttribute("value"));

    private IRenderedComponent<PasswordField> Show(string? error) =>
        Render<PasswordField>(with => with.Add(p => p.Id, "password").Add(p => p.Name, "Typed.Password").Add(p => p.Error, error));
}
