using HomeLine.Agency.Orders;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace HomeLine.Agency.Storage.Mapping;

internal sealed class ReferralMapping : IEntityTypeConfiguration<Referral>
{
    public void Configure(EntityTypeBuilder<Referral> builder)
    {
        builder.NumberedRows("referrals").Changeable();
        builder.Property(r => r.Id).IsRequired();
        builder.HasIndex(r => r.Id).IsUnique();
    }
}
