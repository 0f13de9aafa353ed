using HomeLine.LineCare.Policy;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace HomeLine.Agency.Storage.Mapping;

internal sealed class PolicyRuleMapping : IEntityTypeConfiguration<PolicyRule>
{
    public void Configure(EntityTypeBuilder<PolicyRule> builder)
    {
        // Written once since the policy library; the row version of the time before stays where it is.
        builder.NumberedRows("policy_rules").Changeable().WrittenOnce();
        builder.Property(r => r.Id).IsRequired();
        builder.HasIndex(r => new { r.Id, r.EffectiveFrom, r.Level }).IsUnique();
    }
}
