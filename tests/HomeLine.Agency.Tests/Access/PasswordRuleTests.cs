using HomeLine.Agency.Access;

namespace HomeLine.Agency.Tests.Access;

/// <summary>
/// Lengths and the ban on demands for kinds of characters: NIST SP 800-63B, second public draft 3.1.1.2; 15 from a summary of the final text.
/// The list of refused words is our own default.
/// </summary>
public sealed class PasswordRuleTests
{
    [Theory]
    [InlineData("four plain words here")]
    [InlineData("blue ferry eats rye")]
    [InlineData("àéîõü ñandú über œuvre")]
    [InlineData("🐟🐟🐠 🐡🐙🦀🦐 🐚🐳🐋🦈🐬🐊🐸")]
    [InlineData("correct nurse battery staple")]
    [InlineData("!$%&/()=?*+#-_ab")]
    public void Long_and_plain_is_enough(string password) => Assert.Null(Code(password));

    [Fact]
    public void Sixty_four_characters_are_taken_whole() =>
        Assert.Null(Code(string.Concat(Enumerable.Range(0, 64).Select(i => (char)('a' + (i * 7 % 26))))));

    [Theory]
    [InlineData("short one 14ch", "password-short")]
    [InlineData("", "password-short")]
    [InlineData("Pass Word Pass Word", "password-common")]
    [InlineData("PASSWORD!PASSWORD!", "password-common")]
    [InlineData("aaaaaaaaaaaaaaaaaaaa", "password-common")]
    [InlineData("123451234512345", "password-common")]
    [InlineData("Qwertyuiop Asdfghjkl", "password-common")]
    [InlineData("HomeLine-HomeLine", "password-common")]
    [InlineData("dressing change!", "password-common")]
    [InlineData("...............", "password-common")]
    [InlineData("Margarethe Longname", "password-own-name")]
    public void What_is_tried_first_is_refused_with_the_reason(string password, string code) => Assert.Equal(code, Code(password));

    [Theory]
    [InlineData(14, "password-short")]
    [InlineData(15, null)]
    [InlineData(128, null)]
    [InlineData(129, "password-long")]
    public void Characters_are_counted_as_people_count_them(int length, string? code) =>
        Assert.Equal(code, Code(string.Concat(Enumerable.Range(0, length).Select(i => char.ConvertFromUtf32(0x1F400 + i)))));

    private static string? Code(string password) => PasswordRule.Refuse(password, ["Margarethe Longname", "margarethe.longname"])?.Code;
}
