//! What stands on the screen of a whole window, as AccessKit's tree has it.

use bevy::prelude::{App, With};
use bevy_egui::egui::accesskit::{Node, NodeId};
use bevy_egui::{EguiOutput, PrimaryEguiContext};
use std::collections::HashMap;

/// The tree of the last frame.
pub struct Tree {
    root: NodeId,
    pub nodes: HashMap<NodeId, Node>,
}

impl Default for Tree {
    fn default() -> Self {
        Tree {
            root: NodeId(0),
            nodes: HashMap::new(),
        }
    }
}

impl Tree {
    /// Takes over what the last frame had: what there was before, unless that frame laid nothing out.
    pub fn take(&mut self, app: &mut App) -> Option<HashMap<NodeId, Node>> {
        let mut outputs = app
            .world_mut()
            .query_filtered::<&EguiOutput, With<PrimaryEguiContext>>();
        let output = outputs.single(app.world()).expect("one context");
        let update = output.platform_output.accesskit_update.as_ref()?;
        if let Some(tree) = &update.tree {
            self.root = tree.root;
        }
        let nodes = update.nodes.iter().cloned().collect();
        Some(std::mem::replace(&mut self.nodes, nodes))
    }

    /// Every node in the order in which it is read.
    pub fn in_order(&self) -> Vec<(NodeId, &Node)> {
        let (mut order, mut open) = (Vec::new(), vec![self.root]);
        while let Some(id) = open.pop() {
            if let Some(node) = self.nodes.get(&id) {
                order.push((id, node));
                open.extend(node.children().iter().rev());
            }
        }
        order
    }

    /// What a node is called, by itself or by what stands beside it.
    pub fn called<'a>(&'a self, node: &'a Node) -> &'a str {
        let beside = node.labelled_by().first().and_then(|id| self.nodes.get(id));
        beside.map_or_else(|| name(node), name)
    }
}

/// What a node is called by itself.
pub fn name(node: &Node) -> &str {
    node.label().or(node.value()).unwrap_or_default()
}
