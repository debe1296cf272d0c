use super::{BoxJointRequest, LayoutRequest, box_joint};
use crate::cutter::CutterRequest;
use crate::dial::ScrewRequest;

fn demo() -> BoxJointRequest {
    BoxJointRequest {
        width: 140.0.into(),
        a: super::BoardRequest { thickness: 12.0.into() }.into(),
        b: super::BoardRequest { thickness: 18.0.into() }.into(),
        cutter: CutterRequest { kerf: 3.2.into(), ..CutterRequest::default() }.into(),
        screw: ScrewRequest { lead: 2.0.into(), divisions: 100.0.into(), ..ScrewRequest::default() }.into(),
        layout: LayoutRequest::count(9.0).into(),
        ..BoxJointRequest::default()
    }
}

#[test]
fn smoke() {
    let planned = box_joint(&demo()).unwrap();
    let p = &planned.plan;
    println!("{:?} {:?} {:?}", p.finger_width, p.sets[0].stops.len(), p.sets[1].stops.len());
    println!("{:#?}", &p.sets[0].stops[..3]);
    println!("{:?}", p.dry_fit);
    println!("{}", serde_json::to_string(&crate::problem::Reply(Ok(planned.clone()))).unwrap().len());
}
