using HomeLine.Agency.Decisions;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace HomeLine.Agency.Storage.Mapping;

internal sealed class OrderRequestMapping : IEntityTypeConfiguration<OrderRequest>
{
    public void Configure(EntityTypeBuilder<OrderRequest> builder)
    {
        builder.NumberedRows("order_requests").WrittenOnce();
        builder.Property(r => r.Id).IsRequired();
        builder.HasIndex(r => r.Id).IsUnique();
        builder.OfPatient(r => r.Patient);
        builder.OnLine(r => r.Line);
    }
}
